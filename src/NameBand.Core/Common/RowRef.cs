namespace NameBand.Common;

/// <summary>A row of a supporter list: the list's file name inside the job folder and the physical line, header line 1.</summary>
public readonly record struct RowRef(string List, int Line)
{
    public override string ToString() => $"{List}, line {Line.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
}
