namespace NameBand.Common;

/// <summary>A thing that has words of its own where it stands in a text.</summary>
internal interface ITold
{
    Said InWords { get; }
}
