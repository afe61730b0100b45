namespace NameBand.Stitching;

/// <summary>How the strokes of a name are sewn: all of its letters alike.</summary>
internal enum NameStyle
{
    /// <summary>Along their centre lines, out and back.</summary>
    Run,

    Satin,
}
