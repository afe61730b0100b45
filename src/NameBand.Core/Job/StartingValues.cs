namespace NameBand.Job;

/// <summary>
/// What an act takes where job.json does not say, in one table; docs/times.md has the same one in words. All are common
/// practice, no source. A machine's own speeds stand in <see cref="JobDefaults"/>.
/// </summary>
internal static class StartingValues
{
    /// <summary>Washing, hanging out and ironing the cloth, once.</summary>
    public const double WashingMinutes = 15;

    public const double CuttingMinutesPerMetre = 0.5;

    public const double RulingMinutesPerMetre = 0.5;

    public const double BackingMinutesPerPiece = 0.25;

    /// <summary>Reading one name letter by letter against the list.</summary>
    public const double CheckingMinutesPerName = 0.5;

    /// <summary>Hooping the swatch, pressing and measuring it; the machine's part is <see cref="SwatchMachineMinutes"/>.</summary>
    public const double SwatchMinutes = 20;

    public const double SwatchMachineMinutes = 8;

    /// <summary>A screwed hoop, the cloth set straight in it.</summary>
    public const double HoopingMinutes = 4.5;

    /// <summary>Backing in the hoop, the cloth laid on it.</summary>
    public const double LaidMinutes = 3.5;

    public const double ClampMinutes = 2;

    public const double MagnetMinutes = 1.5;

    /// <summary>A screwed hoop in the first <see cref="FirstHoopings"/> hoopings of a job, until the hands know it.</summary>
    public const double FirstHoopingsMinutes = 7;

    public const int FirstHoopings = 5;

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

    public const double PositioningMinutes = 0.7;

    public const double ClippingMinutesPerName = 0.5;

    public const double SecondsPerSnip = 4;

    public const double TearAwayMinutesPerName = 0.75;

    /// <summary>Where a strip is fed on one long backing.</summary>
    public const double TearAwayMinutesPerMetre = 1.5;

    /// <summary>Printing, taping together and pinning a template.</summary>
    public const double TemplateMinutesPerMetre = 6;

    public const double SpoiledPer100Names = 2;

    public const double UnpickingMinutesPerName = 10;

    public const double PressingMinutesPerMetre = 2;

    /// <summary>Both edges of a strip with a rotary cutter, a minute each.</summary>
    public const double TrimmingMinutesPerMetre = 2;

    /// <summary>Between strips side by side, with a rotary cutter.</summary>
    public const double CuttingApartMinutesPerMetre = 1;

    public const double JoinMinutes = 6;

    /// <summary>One edge, over a card: both take 2.5.</summary>
    public const double TurningInMinutesPerMetre = 1.25;

    /// <summary>One tapered tuck, folded and pinned.</summary>
    public const double TuckMinutes = 0.4;

    public const double PinningMinutesPerMetre = 3;

    public const double SewingLowerEdgeMinutesPerMetre = 2.5;

    public const double SewingUpperEdgeMinutesPerMetre = 3;

    /// <summary>An accent or a stroke sewn by hand to a letter: one or two minutes, common practice, no source.</summary>
    public const double HandMarkMinutes = 1.5;

    /// <summary>A strip drawn back to where it began, its lower line found under the needle: our assumption.</summary>
    public const double LowerLineMinutes = 2;

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
