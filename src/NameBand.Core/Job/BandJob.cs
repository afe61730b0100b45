using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>How the names get onto the cloth.</summary>
public enum Way
{
    NeedlePath,
    MachineLetters,
    Traced,
}

public enum NameOrder
{
    Listed,
    Alphabetical,
    BestFit,
}

public enum GarmentSide
{
    Outside,
    Inside,
}

public enum Reader
{
    Viewer,
    Wearer,
}

/// <summary>A job read from its job.json and checked: every length is finite and in range, every list lies inside the folder.</summary>
/// <param name="Folder">Full path of the job's folder.</param>
/// <param name="Ways">Beside each other on the garment: each name goes the first of them that can do it. One at least.</param>
/// <param name="Lists">File names inside the folder, in order of arrival, forward slashes.</param>
public sealed record BandJob(
    string Folder,
    string Title,
    ImmutableArray<Way> Ways,
    ImmutableArray<string> Lists,
    ColumnChoice Columns,
    HemSettings Hem,
    StripSettings Strip,
    LetteringSettings Lettering,
    HoopSettings Hoop,
    string Fabric,
    MachineSettings Machine,
    HandSettings Hands)
{
    /// <summary>What follows from the ways, of any of them.</summary>
    public WayTraits Traits => WayTraits.OfAny(Ways);

    /// <summary>Whether names may go different ways side by side.</summary>
    public bool HasSeveralWays => Ways.Length > 1;

    /// <summary>Whether cloth is hooped for any name; else a strip is sewn in one run, under the presser foot or along a
    /// template.</summary>
    public bool IsHooped => Ways.Any(IsHoopedIn);

    public bool IsHoopedIn(Way way) => WayTraits.Of(way) is var traits
        && (traits.FollowsCoordinates || (traits.HasLettersOfItsOwn && Letters.Hooped));

    /// <summary>What makes the strip firm: where no hoop holds it and a machine sews, starch, unless the job says otherwise.</summary>
    public Stiffening Stiffening => Strip.Stiffening
        ?? (IsHooped || (Traits.IsFollowedByHand && Traced.ByHand) ? Stiffening.None : Stiffening.Starch);

    /// <summary>Her own figure, or what its kind takes.</summary>
    public double StiffeningMinutesPerMetre => Hands.StiffeningMinutesPerMetre ?? StiffeningValues.MinutesPerMetre(Stiffening);

    /// <summary>How what is hooped is held, and how hoopings from needle paths are marked.</summary>
    public Holding Holding { get; init; } = Holding.Usual;

    /// <summary>The same job sewn in a frame of its workshop.</summary>
    public BandJob In(Frame frame)
    {
        double slower = Hands.FirstHoopingsMinutes - Hands.HoopingMinutes;
        double minutes = frame.MountMinutes ?? Hands.HoopingMinutes;
        return this with
        {
            Frame = frame,
            Holding = Holding with { Hold = frame.HeldBy ?? Holding.Hold },
            Hoop = Hoop with { Along = frame.Along, Across = frame.Across },
            Hands = Hands with { HoopingMinutes = minutes, FirstHoopingsMinutes = frame.FirstMountMinutes ?? (minutes + slower) },
        };
    }

    /// <summary>What is wished for single names, in the order in which it was wished.</summary>
    public ImmutableArray<NameWish> Wishes { get; init; } = [];

    public BobbinSettings Bobbin { get; init; } = new();

    public ShopSettings Shop { get; init; } = new();

    public PriceSettings Prices { get; init; } = new();

    public LayoutSettings Layout { get; init; } = new();

    /// <summary>Machines, frames, people and evenings, as far as they are known.</summary>
    public Workshop Workshop { get; init; } = Workshop.Assumed;

    /// <summary>Whether the machine that follows coordinates cuts its thread; it does where nothing is said.</summary>
    public bool CutsThread => Workshop.MachineFor(Way.NeedlePath) is not { CutsThread: false };

    /// <summary>Frames to choose from, the largest first, each with its minutes; empty where the job gives the field itself, or
    /// no frame is known.</summary>
    public ImmutableArray<Frame> Frames { get; init; } = [];

    /// <summary>The frame that the field is of; null where the job gives the field itself, or no frame is known.</summary>
    public Frame? Frame { get; init; }

    /// <summary>Room left blank at the end of every round for names that come later.</summary>
    public Length KeepFree { get; init; } = Length.FromMm(0);

    /// <summary>More names are expected: a tenth of every round is left blank for them, or <see cref="KeepFree"/> where that is
    /// more.</summary>
    public bool HasMoreToCome { get; init; }

    /// <summary>What is not sewn yet takes face, letter height and cloth from the job, though what is sewn has others.</summary>
    public bool RestMayDiffer { get; init; }

    /// <summary>Minutes of one evening at the machine; null when the job does not say.</summary>
    public double? EveningMinutes { get; init; }

    /// <summary>Minutes of the evenings from Monday to Sunday, 0 where nobody sews; null when neither job nor workshop says.</summary>
    public ImmutableArray<double>? WeekMinutes { get; init; }

    /// <summary>The day by which all is to be sewn down; null when the job does not say.</summary>
    public DateOnly? FinishBy { get; init; }

    public LettersSettings Letters { get; init; } = LettersSettings.Usual;

    public TracedSettings Traced { get; init; } = new();

    public StitchSettings Stitches { get; init; } = new();

    public FileSettings Files { get; init; } = new(Svg: false, Program: false);

    public ShowSettings Show { get; init; } = ShowSettings.Usual;

    public ProgramSettings Program { get; init; } = ProgramSettings.Usual;

    public GroupSettings Groups { get; init; } = GroupSettings.None;

    public MotifSettings Motif { get; init; } = MotifSettings.None;

    public AskingSettings Asking { get; init; } = new();

    public ColourSettings Colours { get; init; } = new();

    /// <summary>What she wants most of the plans that there are.</summary>
    public PlanWish Wish { get; init; }

    /// <summary>Whether people will read the names while it is worn; null: the job does not say.</summary>
    public bool? ReadWhileWorn { get; init; }
}

/// <summary>Which column of the lists is which, where it cannot be found by itself; null means: find it.</summary>
/// <param name="Name">Header of the column that holds the name to sew.</param>
/// <param name="LeaveOut">Header of the column in which a row asks not to be shown.</param>
/// <param name="Group">Header of the column that says in which group a row is.</param>
public sealed record ColumnChoice(string? Name = null, string? LeaveOut = null, string? Group = null)
{
    /// <summary>Headers of columns in which a yes asks not to be shown.</summary>
    public ImmutableArray<string> Hide { get; init; } = [];

    /// <summary>Headers of columns in which a yes says that the name may be shown.</summary>
    public ImmutableArray<string> Show { get; init; } = [];

    /// <summary>Headers of columns in which a yes says that the name may be shown on the web; of the garment they say nothing.</summary>
    public ImmutableArray<string> Web { get; init; } = [];

    /// <summary>Header of the column of addresses, for the letters to owners alone; null: find it.</summary>
    public string? Address { get; init; }

    /// <summary>Headers of columns that have nothing to do with whether a name may be shown.</summary>
    public ImmutableArray<string> Ignored { get; init; } = [];
}

/// <summary>Waist, length and turn of a part-circle skirt.</summary>
/// <param name="Turn">Part of a full circle, above 0, at most 2 (two circles joined).</param>
public sealed record SkirtSettings(double Turn, Length Waist, Length Length, Length TakenUp);

/// <summary>The edge the strips go round: measured (<paramref name="Lengths"/>) or of a skirt, never both.</summary>
/// <param name="Lengths">One length, or one for each round, lowest first; empty when <paramref name="Skirt"/> is given.</param>
/// <param name="Turn">With a measured length: part of a full circle, 0 for a straight edge; null when not said.</param>
public sealed record HemSettings(
    ImmutableArray<Length> Lengths, SkirtSettings? Skirt, double? Turn, bool Closed, Length Overlap, Length Tolerance)
{
    /// <summary>The tolerance as a part of the hem, where that is more; 0 where the job says a tolerance itself.</summary>
    public double TolerancePart { get; init; }
}

/// <param name="Rounds">How many strips go round, or null for as many as needed.</param>
/// <param name="RoundStep">Null: finished width and half an inch.</param>
/// <param name="Shortening">Part of its length that cloth loses as it is sewn.</param>
public sealed record StripSettings(
    Length CutWidth, Length TurnIn, Length Margin, bool SewnBeforeCutting, double Shortening, int? Rounds,
    Length Lift, Length? RoundStep, GarmentSide Side, Reader ReadBy)
{
    /// <summary>Whether the job says the shortening; else it is the usual one of how the strip is stiffened.</summary>
    public bool IsShorteningTold { get; init; }

    /// <summary>How the job wants it stiffened; null: it does not say.</summary>
    public Stiffening? Stiffening { get; init; }
}

/// <param name="Face">A face in fonts-open by name, or a path to a TTF or OTF inside the folder.</param>
/// <param name="Height">Null: the largest at which all names fit.</param>
/// <param name="Gap">Null: one and a half letter heights.</param>
public sealed record LetteringSettings(
    string Face, Length? Height, Length Least, Length? Gap, bool Spread, NameOrder Order, string Collation)
{
    /// <summary>Whether the job says which face; else it is the usual one.</summary>
    public bool IsFaceNamed { get; init; }

    /// <summary>Names that their owners have not agreed to yet come last.</summary>
    public bool AgreedFirst { get; init; }
}

public sealed record HoopSettings(Length Along, Length Across, Length Spare);

/// <summary>Speeds and times of the machine; sources in docs/times.md.</summary>
public sealed record MachineSettings(
    double StitchesPerMinute, double SecondsPerJump, double SecondsPerTrim, double SecondsPerStop, double SecondsToStart)
{
    /// <summary>Stitches longer than this slow the machine down: the cloth has farther to move between two penetrations.</summary>
    public double SlowAboveMm { get; init; } = 4;

    /// <summary>Part by which the time of a stitch grows for each mm over <see cref="SlowAboveMm"/>.</summary>
    public double SlowPerMm { get; init; } = 0.15;

    public double ShortBelowMm { get; init; } = 1;

    /// <summary>Time of a stitch under <see cref="ShortBelowMm"/>, as a multiple of a usual one's.</summary>
    public double ShortFactor { get; init; } = 1.15;

    public double BreaksPer1000Stitches { get; init; } = 0.1;

    public double SecondsPerBreak { get; init; } = 90;

    public double SecondsPerBobbin { get; init; } = 60;

    /// <summary>Somebody sits by it while it sews; else hand work goes on meanwhile.</summary>
    public bool IsWatched { get; init; } = true;

    /// <summary>Names of the machines that sew side by side; empty for one machine without a name.</summary>
    public ImmutableArray<string> Names { get; init; } = [];
}

/// <summary>Minutes of hand work; sources in docs/times.md.</summary>
public sealed record HandSettings(
    double HoopingMinutes, double TearAwayMinutesPerName, double ClippingMinutesPerName, double PressingMinutesPerMetre,
    double TrimmingMinutesPerMetre, double TurningInMinutesPerMetre, double PinningMinutesPerMetre,
    double SewingLowerEdgeMinutesPerMetre, double SewingUpperEdgeMinutesPerMetre, double JoinMinutes, double RestAllowance)
{
    public double WashingMinutes { get; init; } = StartingValues.WashingMinutes;

    public double CuttingMinutesPerMetre { get; init; } = StartingValues.CuttingMinutesPerMetre;

    public double RulingMinutesPerMetre { get; init; } = StartingValues.RulingMinutesPerMetre;

    public double? StiffeningMinutesPerMetre { get; init; }

    public double BackingMinutesPerPiece { get; init; } = StartingValues.BackingMinutesPerPiece;

    public double CheckingMinutesPerName { get; init; } = StartingValues.CheckingMinutesPerName;

    public double SwatchMinutes { get; init; } = StartingValues.SwatchMinutes;

    public double SwatchMachineMinutes { get; init; } = StartingValues.SwatchMachineMinutes;

    /// <summary>Of each of the first <see cref="StartingValues.FirstHoopings"/> hoopings.</summary>
    public double FirstHoopingsMinutes { get; init; } = StartingValues.FirstHoopingsMinutes;

    /// <summary>Taking the sewn marks of a hooping out.</summary>
    public double MarksOutMinutes { get; init; } = StartingValues.MarksOutMinutes;

    /// <summary>Drawing a hooping's two crosses and bringing them under the needle.</summary>
    public double DrawnMarksMinutes { get; init; } = StartingValues.DrawnMarksMinutes;

    /// <summary>Laying a hooping's printed template and bringing its crosses under the needle.</summary>
    public double PaperMarksMinutes { get; init; } = StartingValues.PaperMarksMinutes;

    public double SecondsPerSnip { get; init; } = StartingValues.SecondsPerSnip;

    /// <summary>Of one long backing; null: it goes by the name, as hoopings do.</summary>
    public double? TearAwayMinutesPerMetre { get; init; } = StartingValues.TearAwayMinutesPerMetre;

    public double SpoiledPer100Names { get; init; } = StartingValues.SpoiledPer100Names;

    public double UnpickingMinutesPerName { get; init; } = StartingValues.UnpickingMinutesPerName;

    public double CuttingApartMinutesPerMetre { get; init; } = StartingValues.CuttingApartMinutesPerMetre;

    public double TuckMinutes { get; init; } = StartingValues.TuckMinutes;
}
