using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>The keys of the further forms of a needle path; what they mean: docs/files.md.</summary>
internal static class FileKeys
{
    public static readonly FlagKey Svg = new("files.svg", false);
    public static readonly FlagKey Program = new("files.program", false);
    public static readonly FlagKey LoadMap = new("files.loadMap", false);
    public static readonly TextKey Start = new("program.start", ProgramSettings.Usual.Start);
    public static readonly TextKey Needle = new("program.needle", ProgramSettings.Usual.Needle);
    public static readonly TextKey Trim = new("program.trim", ProgramSettings.Usual.Trim);
    public static readonly TextKey Stop = new("program.stop", ProgramSettings.Usual.Stop);
    public static readonly TextKey End = new("program.end", ProgramSettings.Usual.End);
    public static readonly NumberKey Feed = new("program.feed", null, 1, 100_000, "from the pace");
    public static readonly NumberKey ThanksWidth = new("thanks.width", ShowSettings.Usual.ThanksWidthPixels, 320, 4096, IsWhole: true);
    public static readonly TextKey ThanksAddress = new("thanks.address", null, "none");
    public static readonly NumberKey PlaybackWidth =
        new("playback.width", ShowSettings.Usual.PlaybackWidthPixels, 240, 2048, IsWhole: true);
    public static readonly NumberKey PlaybackSeconds = new("playback.seconds", ShowSettings.Usual.PlaybackSeconds, 2, 120);

    public static readonly ImmutableArray<JobKey> All =
        [Svg, Program, LoadMap, Start, Needle, Trim, Stop, End, Feed, ThanksWidth, ThanksAddress, PlaybackWidth, PlaybackSeconds];
}
