using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The part of a job that says which ways names may go.</summary>
internal static partial class JobAssembly
{
    private const string Example = "\"ways\": [\"machineLetters\", \"needlePath\"]";

    /// <summary>The ways side by side, in the order in which each name tries them; the one way where no more are given.</summary>
    public static ImmutableArray<Way> Ways(JobValues values)
    {
        var way = values.Word(JobKeys.Way);
        if (values.Form(JobKeys.Ways) is not { } given)
        {
            return [way];
        }

        if (given.Kind != JsonKind.Series)
        {
            values.Refuse(
                JobKeys.Ways, $"ways takes {JobKeys.Ways.Takes}, and this is {given.InWords}.",
                $"Put them in brackets, such as {Example}.");
            return [way];
        }

        if (given.Items.IsEmpty)
        {
            values.Refuse(
                JobKeys.Ways, "ways is an empty list, and then no name could be sewn.",
                $"Write the ways into it, such as {Example}, or take the key out.");
            return [way];
        }

        var ways = given.Items.Select((item, i) => One(values, item, i)).ToList();
        if (ways.Exists(w => w is null))
        {
            return [way];
        }

        ImmutableArray<Way> known = [.. ways.Select(w => w!.Value)];
        if (values.Has(JobKeys.Way) && values.AreSound(JobKeys.Way) && !known.Contains(way))
        {
            values.Refuse(
                JobKeys.Ways, $"way says \"{JobKeys.WordOf(way)}\", and ways does not have it.",
                "Keep the one that is meant: ways where names may go several ways side by side, else way.");
        }

        return known.Distinct().Count() == known.Length ? known : [way];
    }

    private static Way? One(JobValues values, JsonPiece item, int index)
    {
        string path = $"ways[{index + 1}]";
        var choice = item.Kind == JsonKind.Text ? JobKeys.Way.Read.Where(c => c.Word == item.Text).ToList() : [];
        if (choice.Count == 0)
        {
            string? near = item.Kind == JsonKind.Text ? NearestWord.Find(item.Text, JobKeys.Way.Words) : null;
            values.Refuse(
                JobKeys.Ways, item, path, $"Entry {index + 1} of ways must be {JobKeys.Way.Takes}, and this is {item.InWords}.",
                near is null ? (Said)$"Write {JobKeys.Way.Takes}." : $"Did you mean \"{near}\"?");
            return null;
        }

        if (values.Form(JobKeys.Ways)!.Items.Take(index).Any(i => i.Kind == JsonKind.Text
            && JobKeys.Way.Read.Any(c => c.Word == i.Text && c.Value == choice[0].Value)))
        {
            values.Refuse(
                JobKeys.Ways, item, path, $"ways has \"{item.Text}\" twice.", "Name each way once: a name goes the first that can do it.");
        }

        return choice[0].Value;
    }
}
