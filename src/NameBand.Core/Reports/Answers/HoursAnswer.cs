using NameBand.Common;
using NameBand.PlanFile;

namespace NameBand.Reports.Answers;

/// <summary>What <c>hours</c> answers: the work act by act, what to buy, and which evening does what.</summary>
public sealed record HoursAnswer : CommandAnswer
{
    public required string Title { get; init; }

    /// <summary>The plan's, as it stands on all its sheets.</summary>
    public required string Mark { get; init; }

    public required int Names { get; init; }

    public required int Hoopings { get; init; }

    /// <summary>Where names go several ways side by side: hoopings and runs without a hoop, in words.</summary>
    public Said? TakenUp { get; init; }

    /// <summary>Whether the cloth is hooped; else each strip is sewn in one run.</summary>
    public required bool Hooped { get; init; }

    public required IReadOnlyList<ToldAct> Machine { get; init; }

    public required IReadOnlyList<ToldAct> Hands { get; init; }

    /// <summary>The same acts, as plan.json has them.</summary>
    public required IReadOnlyList<WrittenAct> Work { get; init; }

    /// <summary>Why acts of each cause take longer or shorter than calculated, in the order of the work.</summary>
    public required IReadOnlyList<ToldCause> Causes { get; init; }

    public required ToldFigure MachineMinutes { get; init; }

    public required ToldFigure HandsOnMinutes { get; init; }

    public required ToldFigure AllMinutes { get; init; }

    /// <summary>By the clock.</summary>
    public required double ElapsedMinutes { get; init; }

    public ToldFigure? MachineMinutesAtSetPace { get; init; }

    public ToldFigure? HandsOnMinutesAtSetPace { get; init; }

    /// <summary>Whether anything is sewn or done; what is left is the whole until then.</summary>
    public required bool Begun { get; init; }

    /// <summary>Hoopings that are not sewn; null where none is logged as such.</summary>
    public int? HoopingsLeft { get; init; }

    /// <summary>Names that are not sewn, of those that are keyed in or traced; null where there are none.</summary>
    public int? NamesLeft { get; init; }

    /// <summary>All names that are keyed in or traced, and so logged one by one; null where there are none.</summary>
    public int? NamesByName { get; init; }

    public required ToldFigure MachineMinutesLeft { get; init; }

    public required ToldFigure HandsOnMinutesLeft { get; init; }

    /// <summary>The hand work when all is sewn.</summary>
    public required double FinishingMinutesLeft { get; init; }

    public required int Bobbins { get; init; }

    public required double BobbinHoldsM { get; init; }

    public required IReadOnlyList<ToldBobbin> BobbinChanges { get; init; }

    public required IReadOnlyList<ToldBuy> Shopping { get; init; }

    /// <summary>Empty where job.json names none.</summary>
    public required string Currency { get; init; }

    /// <summary>Sum of the prices that are known.</summary>
    public double? Total { get; init; }

    /// <summary>What the hours are worth.</summary>
    public double? Worth { get; init; }

    public ToldPace? MachinePace { get; init; }

    public ToldPace? HandsPace { get; init; }

    /// <summary>What the log has taught of names that go wrong; null: nothing.</summary>
    public ToldSpoils? Spoils { get; init; }

    /// <summary>The evenings that are planned; this and what follows is null for one machine without evenings.</summary>
    public int? Evenings { get; init; }

    public int? LeastEvenings { get; init; }

    public double? LeastMinutes { get; init; }

    public double? PlannedMinutes { get; init; }

    public bool? IsProvenBest { get; init; }

    public IReadOnlyList<ToldSitting>? Sittings { get; init; }

    /// <summary>The day by which all is to be sewn down; this and the next three are null where the job names none, or no
    /// evenings.</summary>
    public DateOnly? FinishBy { get; init; }

    /// <summary>The last day on which to begin; null also where it is too late for that.</summary>
    public DateOnly? BeginBy { get; init; }

    /// <summary>Day of the last evening when it is begun today; null also where nothing is left.</summary>
    public DateOnly? DoneOn { get; init; }

    /// <summary>Evenings so much longer would do; null also where they do as they are, or none would.</summary>
    public double? LongerByMinutes { get; init; }

    /// <summary>What the next evening holds; null where no evening is known, or nothing is left.</summary>
    public ToldTonight? Tonight { get; init; }

    /// <summary>Hoopings that take longer than an evening.</summary>
    public IReadOnlyList<int>? TooLong { get; init; }

    /// <summary>What is taken of her machine; null where a workshop.json tells it.</summary>
    public AssumedWorkshop? Assumed { get; init; }
}

public sealed record ToldAct
{
    public required Said Work { get; init; }

    public required double Amount { get; init; }

    public required Said Unit { get; init; }

    public required double LowMinutes { get; init; }

    public required double LikelyMinutes { get; init; }

    public required double HighMinutes { get; init; }

    public required Said Why { get; init; }
}

/// <param name="Name">As the acts name it.</param>
public sealed record ToldCause(Said Name, Said Why);

public sealed record ToldBobbin
{
    public required int Hooping { get; init; }

    /// <summary>Number of the name; 0 where the marks of the hooping come first.</summary>
    public required int BeforeName { get; init; }

    public required int Bobbins { get; init; }

    public required bool Past { get; init; }

    /// <summary>Still on the old one, which would not have finished the name.</summary>
    public required double LeftM { get; init; }

    /// <summary>How often more it is changed inside the name.</summary>
    public required int InName { get; init; }
}

public sealed record ToldBuy
{
    public required Said What { get; init; }

    public required double Amount { get; init; }

    public required Said Unit { get; init; }

    /// <summary>The amount as it is said in a shop.</summary>
    public required Said InShop { get; init; }

    /// <summary>What the work uses, waste included, in words.</summary>
    public required Said Needed { get; init; }

    public double? Price { get; init; }
}

/// <summary>What the sewing log has taught of names that go wrong.</summary>
/// <param name="Sewn">Names that are logged.</param>
/// <param name="SetPer100">As it is set in job.json.</param>
/// <param name="NowPer100">As it is taken now.</param>
public sealed record ToldSpoils(int Sewn, int Spoiled, double SetPer100, double NowPer100);

/// <summary>What the sewing log has taught of a pace.</summary>
public sealed record ToldPace
{
    /// <summary>Hoopings it was learned from.</summary>
    public required int Timed { get; init; }

    /// <summary>Minutes that each calculated one takes.</summary>
    public required double Factor { get; init; }

    public required double LeftLowMinutes { get; init; }

    public required double LeftLikelyMinutes { get; init; }

    public required double LeftHighMinutes { get; init; }

    /// <summary>What is left, as it would be estimated with nothing timed.</summary>
    public required double BeforeLowMinutes { get; init; }

    public required double BeforeLikelyMinutes { get; init; }

    public required double BeforeHighMinutes { get; init; }
}

public sealed record ToldSitting
{
    public required int Evening { get; init; }

    /// <summary>Null where the evenings are not dated.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>Whose it is, where several people sew; null for one.</summary>
    public string? Person { get; init; }

    /// <summary>Empty where there is only one, without a name.</summary>
    public required string Machine { get; init; }

    public required double Minutes { get; init; }

    public required IReadOnlyList<ToldTask> Before { get; init; }

    public required IReadOnlyList<ToldTask> After { get; init; }

    public required IReadOnlyList<int> Hoopings { get; init; }
}

public sealed record ToldTask(Said Act, double Minutes);

public sealed record ToldTonight
{
    /// <summary>The whole in words.</summary>
    public required Said Text { get; init; }

    /// <summary>Null where the evenings are not dated.</summary>
    public DateOnly? Day { get; init; }

    public required double Minutes { get; init; }

    public required int Names { get; init; }

    /// <summary>Number of the last name; null where none is sewn.</summary>
    public int? LastName { get; init; }

    public required IReadOnlyList<int> Hoopings { get; init; }

    /// <summary>To be wound before it begins.</summary>
    public required int Bobbins { get; init; }
}
