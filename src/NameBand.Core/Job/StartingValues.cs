namespace NameBand.Job;

/// <summary>
/// What an act takes where job.json does not say, in one table; docs/times.md has the same one in words. All are common
/// practice, no source. A machine's own speeds stand in <see cref="JobDefaults"/>.
/// </summary>
internal static class StartingValues
{
    /// <summary>Washing, hanging out and ironing the cloth, once.</summary>
    public const double WashingMinutes = 15;

    // Two metres a minute each, along a ruler with a rotary cutter or a pencil: common practice, no source.
    public const double CuttingMinutesPerMetre = 0.5;
    public const double RulingMinutesPerMetre = 0.5;

    public const double BackingMinutesPerPiece = 0.25; // A piece cut for a hooping or a run: common practice, no source.

    /// <summary>Reading one name letter by letter against the list.</summary>
    public const double CheckingMinutesPerName = 0.5;

    /// <summary>Hooping the swatch, pressing and measuring it; the machine's part is <see cref="SwatchMachineMinutes"/>.</summary>
    public const double SwatchMinutes = 20;

    public const double SwatchMachineMinutes = 8; // Sewing it, the change of thread after its crosses included: common practice, no source.

    /// <summary>A screwed hoop, the cloth set straight in it.</summary>
    public const double HoopingMinutes = 4.5;

    /// <summary>Backing in the hoop, the cloth laid on it.</summary>
    public const double LaidMinutes = 3.5;

    public const double ClampMinutes = 2; // Nothing to screw and to draw tight: half of a screwed hoop. Common practice, no source.

    public const double MagnetMinutes = 1.5; // The bars are laid on in one go: common practice, no source.

    /// <summary>A screwed hoop in the first <see cref="FirstHoopings"/> hoopings of a job, until the hands know it.</summary>
    public const double FirstHoopingsMinutes = 7;

    public const int FirstHoopings = 5; // A count: by then hands know a hoop (common practice, no source).

    /// <summary>Two pencilled crosses, drawn and brought under the needle.</summary>
    public const double DrawnMarksMinutes = 1;

    /// <summary>Letters that nobody reads while it is worn, in mm: as high is enough.</summary>
    public const double UnreadHeightMm = 7;

    /// <summary>A printed template, cut out, laid on and brought under the needle.</summary>
    public const double PaperMarksMinutes = 2;

    /// <summary>Two sewn crosses picked out again. With the two changes of thread that sewn crosses ask for it comes to 3.5.</summary>
    public const double MarksOutMinutes = 2.2;

    /// <summary>A letter by touch; where letters are scrolled to it is 4.</summary>
    public const double SecondsPerKey = 1;

    /// <summary>Bringing a start mark of a typed name under the needle: common practice, no source (docs/times.md).</summary>
    public const double PositioningMinutes = 0.7;

    /// <summary>The first and the last threads of a name, a quarter of a minute at each end: common practice, no source.</summary>
    public const double ClippingMinutesPerName = 0.5;

    public const double SecondsPerSnip = 4; // Lifting a loose thread and snipping both its ends: common practice, no source.

    public const double TearAwayMinutesPerName = 0.75; // From about the letters and out of their counters: common practice, no source.

    /// <summary>Where a strip is fed on one long backing.</summary>
    public const double TearAwayMinutesPerMetre = 1.5;

    /// <summary>Printing, taping together and pinning a template.</summary>
    public const double TemplateMinutesPerMetre = 6;

    public const double SpoiledPer100Names = 2; // A count, which the log corrects from twenty names on: common practice, no source.

    public const double UnpickingMinutesPerName = 10; // A name’s satin and its underlay, cut and drawn out: common practice, no source.

    public const double PressingMinutesPerMetre = 2; // All of the sewn cloth, with steam: common practice, no source.

    /// <summary>Both edges of a strip with a rotary cutter, a minute each.</summary>
    public const double TrimmingMinutesPerMetre = 2;

    /// <summary>Between strips side by side, with a rotary cutter.</summary>
    public const double CuttingApartMinutesPerMetre = 1;

    public const double JoinMinutes = 6; // Pinned, sewn, its seam pressed open and trimmed: common practice, no source.

    /// <summary>One edge, over a card: both take 2.5.</summary>
    public const double TurningInMinutesPerMetre = 1.25;

    /// <summary>One tapered tuck, folded and pinned.</summary>
    public const double TuckMinutes = 0.4;

    public const double PinningMinutesPerMetre = 3; // To the garment, its marks matched: common practice, no source.

    // By machine, slowly along the fold; the upper edge is eased in and takes longer. Common practice, no source.
    public const double SewingLowerEdgeMinutesPerMetre = 2.5;
    public const double SewingUpperEdgeMinutesPerMetre = 3;

    /// <summary>An accent or a stroke sewn by hand to a letter: one or two minutes, common practice, no source.</summary>
    public const double HandMarkMinutes = 1.5;

    /// <summary>A strip drawn back to where it began, its lower line found under the needle: our assumption.</summary>
    public const double LowerLineMinutes = 2;

    /// <summary>
    /// A part, added to handwork alone: a machine does not tire (S. Konz, Rest Allowances; the value is common practice, no source).
    /// </summary>
    public const double RestAllowance = 0.1;

    /// <summary>A cut that the machine does not make itself: foot up, both threads snipped, foot down.</summary>
    public const double SecondsPerHandCut = 20;

    /// <summary>Minutes of one hooping, the cloth set straight; where nothing is hooped nobody asks.</summary>
    internal static double HoopingMinutesOf(FrameHold hold) => hold switch
    {
        FrameHold.Laid => LaidMinutes,
        FrameHold.Clamp => ClampMinutes,
        FrameHold.Magnet => MagnetMinutes,
        _ => HoopingMinutes,
    };
}
