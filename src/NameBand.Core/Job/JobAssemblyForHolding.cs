using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>How cloth is held and hoopings are set in place.</summary>
internal static partial class JobAssembly
{
    private static Holding HoldingOf(ImmutableArray<Way> ways, JobValues values)
    {
        var way = WayTraits.OfAny(ways);
        FrameHold? hold = values.Has(HoldingKeys.Hold) ? values.Word(HoldingKeys.Hold) : null;
        MarkMethod? marks = values.Has(HoldingKeys.Marks) ? values.Word(HoldingKeys.Marks) : null;
        bool areLettersHooped = values.Flag(LettersKeys.Hooped);
        var holding = Holding.Choose(way, hold, marks, areLettersHooped);
        if (values.AreSound(JobKeys.Way, JobKeys.Ways, HoldingKeys.Hold, HoldingKeys.Marks, LettersKeys.Hooped))
        {
            CheckHold(way, holding, values);
            CheckMarks(way, holding, values);
        }

        return holding;
    }

    private static void CheckHold(WayTraits way, Holding holding, JobValues values)
    {
        if (way.FollowsCoordinates && !holding.IsHooped)
        {
            values.Refuse(
                HoldingKeys.Hold, "A machine that follows coordinates sews in a hoop, and hoop.hold is \"none\".",
                "Write \"screw\", \"clamp\", \"magnet\" or \"laid\"; or let the names go without a hoop: \"way\": \"machineLetters\" or \"traced\".");
        }
        else if (!way.FollowsCoordinates && !way.HasLettersOfItsOwn && holding.IsHooped)
        {
            values.Refuse(
                HoldingKeys.Hold, "Names that are traced are sewn in one run, without a hoop.",
                "Remove hoop.hold, or write \"none\".");
        }
        else if (!way.FollowsCoordinates && way.HasLettersOfItsOwn && values.Has(HoldingKeys.Hold) && values.Has(LettersKeys.Hooped)
            && values.Flag(LettersKeys.Hooped) != holding.IsHooped)
        {
            string word = HoldingKeys.Word(holding.Hold);
            values.Refuse(
                HoldingKeys.Hold,
                $"hoop.hold is \"{word}\", and letters.hooped is {(holding.IsHooped ? (Said)"false" : "true")}: one says a hoop, the other none.",
                "Remove letters.hooped: hoop.hold says it already.");
        }
    }

    /// <summary>Marks set a hooping in its place; what is typed or traced has a place of its own for each name.</summary>
    private static void CheckMarks(WayTraits way, Holding holding, JobValues values)
    {
        string word = HoldingKeys.Word(holding.Marks);
        if (way.FollowsCoordinates && holding.Marks == MarkMethod.None)
        {
            values.Refuse(
                HoldingKeys.Marks, "Without marks nobody can set a hooping where it belongs, and marks is \"none\".",
                "Write \"drawn\", \"paper\" or \"sewn\".");
        }
        else if (!way.FollowsCoordinates && holding.Marks != MarkMethod.None)
        {
            values.Refuse(
                HoldingKeys.Marks,
                !way.HasLettersOfItsOwn
                    ? (Said)$"Names that are traced lie under one template and need no marks; marks is \"{word}\"."
                    : holding.Marks == MarkMethod.Sewn
                        ? "A machine that is typed into sews its letters and no crosses; marks is \"sewn\"."
                        : (Said)$"Each name that is typed has a start mark of its own; marks is \"{word}\".",
                "Remove marks, or write \"none\".");
        }
    }
}
