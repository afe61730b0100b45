using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Puts a job together from checked values.</summary>
internal static partial class JobAssembly
{
    /// <returns>A job that may be used only when no <see cref="Severity.CannotUse"/> problem was found.</returns>
    public static BandJob Make(string folder, JobValues values)
    {
        var ways = Ways(values);
        var holding = HoldingOf(ways, values);
        var job = new BandJob(
            folder,
            values.Text(JobKeys.Title) ?? FolderName(folder),
            ways,
            JobPaths.CheckLists(folder, values),
            new ColumnChoice(values.Text(JobKeys.NameColumn), values.Text(JobKeys.LeaveOutColumn), values.Text(LayoutKeys.GroupColumn))
            {
                Hide = values.Texts(JobKeys.HideColumns),
                Show = values.Texts(JobKeys.ShowColumns),
                Address = values.Text(JobKeys.AddressColumn),
                Web = values.Texts(JobKeys.WebColumns),
                Ignored = values.Texts(JobKeys.IgnoredColumns),
            },
            Hem(values),
            Strip(values, ways, holding),
            Lettering(folder, values),
            new HoopSettings(values.Certain(JobKeys.Along), values.Certain(JobKeys.Across), values.Certain(JobKeys.Spare)),
            values.Text(JobKeys.Fabric)!,
            Machine(values),
            Hands(values, holding))
        {
            Holding = holding,
            Bobbin = Bobbin(values),
            Shop = Shop(values) with { ClothShrinkagePart = Certain(values, LayoutKeys.ClothShrinkage) },
            Prices = Prices(values),
            KeepFree = values.Certain(WorkKeys.KeepFree),
            HasMoreToCome = values.Flag(WorkKeys.MoreToCome),
            EveningMinutes = Evening(values),
            FinishBy = Day(values, WorkKeys.FinishBy),
            RestMayDiffer = values.Flag(WorkKeys.RestMayDiffer),
            Letters = Letters(folder, values, WayTraits.OfAny(ways), holding),
            Traced = Traced(values),
            Layout = Layout(values),
            Stitches = Stitches(values),
            Files = Files(values),
            Show = Show(values),
            Program = Program(values),
            Groups = Groups(folder, values),
            Wishes = Wishes(folder, values),
            Motif = Motif(folder, values),
            Wish = values.Word(PlanKeys.Wish),
            Colours = Colours(values),
            Asking = new AskingSettings(Day(values, AskingKeys.AnswerBy), values.Word(AskingKeys.Silence)),
            ReadWhileWorn = values.Has(PlanKeys.ReadWhileWorn) ? values.Flag(PlanKeys.ReadWhileWorn) : null,
        };
        JobChecks.Check(job, values);
        return job;
    }

    private static string FolderName(string folder) =>
        PlainText.Short(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)), 300) is { Length: > 0 } name ? name : "job";

    private static HemSettings Hem(JobValues values)
    {
        bool isSkirt = values.HasGroup("hem.skirt");
        var skirt = isSkirt
            ? new SkirtSettings(
                values.Number(JobKeys.SkirtTurn) ?? 0, values.Certain(JobKeys.SkirtWaist), values.Certain(JobKeys.SkirtLength),
                values.Certain(JobKeys.SkirtTakenUp))
            : null;
        return new HemSettings(
            values.Lengths(JobKeys.HemLength), skirt, values.Number(JobKeys.HemTurn), values.Flag(JobKeys.Closed),
            values.Certain(JobKeys.Overlap), values.Length(JobKeys.Tolerance) ?? JobDefaults.Tolerance)
        {
            TolerancePart = values.Has(JobKeys.Tolerance) ? 0 : JobDefaults.TolerancePart,
        };
    }

    private static StripSettings Strip(JobValues values, ImmutableArray<Way> ways, Holding holding) => new(
        values.Certain(JobKeys.CutWidth), values.Certain(JobKeys.TurnIn), values.Certain(JobKeys.Margin), values.Word(JobKeys.Sewn),
        values.Number(JobKeys.Shortening) ?? Shortening(values, ways, holding), (int?)values.Number(JobKeys.Rounds),
        values.Certain(JobKeys.Lift),
        values.Length(JobKeys.RoundStep), values.Word(JobKeys.Side), values.Word(JobKeys.ReadBy))
    {
        IsShorteningTold = values.Has(JobKeys.Shortening),
        Stiffening = values.Has(LayoutKeys.Stiffening) ? values.Word(LayoutKeys.Stiffening) : null,
    };

    /// <summary>Until it was measured: a strip that is left limp and that no hoop holds draws together most.</summary>
    private static double Shortening(JobValues values, ImmutableArray<Way> ways, Holding holding) =>
        values.Has(LayoutKeys.Stiffening) && values.Word(LayoutKeys.Stiffening) == Stiffening.None
            && !WayTraits.OfAny(ways).FollowsCoordinates && !holding.IsHooped
                ? StiffeningValues.LimpShorteningPart : JobDefaults.ShorteningPart;

    private static LetteringSettings Lettering(string folder, JobValues values) => new(
        JobPaths.CheckFace(folder, values), values.Length(JobKeys.Height), values.Certain(JobKeys.Least), values.Length(JobKeys.Gap),
        values.Flag(JobKeys.Spread), values.Word(JobKeys.Order), JobChecks.Collation(values))
    {
        IsFaceNamed = values.IsWritten(JobKeys.Face),
        AgreedFirst = values.Flag(JobKeys.AgreedFirst),
    };

    private static MachineSettings Machine(JobValues values) => new MachineSettings(
        Certain(values, JobKeys.StitchesPerMinute), Certain(values, JobKeys.SecondsPerJump), Certain(values, JobKeys.SecondsPerTrim),
        Certain(values, JobKeys.SecondsPerStop), Certain(values, JobKeys.SecondsToStart)).WithWork(values);

    private static HandSettings Hands(JobValues values, Holding holding) => new HandSettings(
        values.Number(JobKeys.Hooping) ?? StartingValues.HoopingMinutesOf(holding.Hold),
        Certain(values, JobKeys.TearAway), Certain(values, JobKeys.Clipping),
        Certain(values, JobKeys.Pressing), Certain(values, JobKeys.Trimming), Certain(values, JobKeys.TurningIn),
        Certain(values, JobKeys.Pinning), Certain(values, JobKeys.SewingLower), Certain(values, JobKeys.SewingUpper),
        Certain(values, JobKeys.Join), Certain(values, JobKeys.RestAllowance)).WithWork(values, holding);

    private static double Certain(JobValues values, NumberKey key) => values.Number(key)!.Value;
}
