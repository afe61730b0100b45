namespace NameBand.Common;

/// <summary>A row of a supporter list: the list's file name inside the job folder and the physical line, header line 1.</summary>
public readonly record struct RowRef(string List, int Line) : ITold
{
    public Said InWords => $"{List}, line {Line}";

    public override string ToString() => InWords.English;
}
