namespace NameBand.Job;

/// <summary>In which forms besides CSV needle paths are written.</summary>
public sealed record FileSettings(bool Svg, bool Program)
{
    /// <summary>Whether a map of the load is drawn for each hooping.</summary>
    public bool LoadMap { get; init; }
}

/// <summary>The words a builder's own machine goes by, in programs of ISO 6983-1; each is one word or several.</summary>
/// <param name="Start">Said once, before anything moves.</param>
/// <param name="Needle">The needle goes down and up again where the cloth lies now.</param>
/// <param name="Trim">The thread is cut.</param>
/// <param name="Stop">The machine waits for a person.</param>
/// <param name="FeedMmPerMinutes">Speed of the cloth in a stitch, in mm a minute; null: the stitch's length times the pace.</param>
public sealed record ProgramSettings(string Start, string Needle, string Trim, string Stop, string End, double? FeedMmPerMinutes = null)
{
    public static ProgramSettings Usual { get; } = new("G90 G71 G94", "M21", "M22", "M00", "M02");
}
