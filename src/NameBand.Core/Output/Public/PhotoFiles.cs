using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output.Public;

/// <summary>A photo in the job's folder photos/, and whose names it shows.</summary>
/// <param name="File">Relative to the job's folder.</param>
/// <param name="Hoopings">All that lies on it.</param>
/// <param name="IsOfPart">It shows a part of the hem and not all of it.</param>
internal sealed record PhotoFile(string File, ImmutableArray<Hooping> Hoopings, bool IsOfPart)
{
    public IEnumerable<PlacedName> Names => Hoopings.SelectMany(h => h.Segments.SelectMany(s => s.Segment.Names));
}

/// <summary>
/// Finds photos by their names: <c>hooping-12.jpg</c>, <c>round-1.jpg</c>, <c>hem.jpg</c>, each with anything after a further
/// hyphen. What else lies
/// there is told and left alone.
/// </summary>
internal static partial class PhotoFiles
{
    public const string Folder = "photos";

    /// <summary>More than any camera's picture at its best; our choice.</summary>
    public const long MostBytes = 40_000_000;

    public static ImmutableArray<PhotoFile> In(string jobFolder, StripPlan plan, List<Problem> problems)
    {
        if (InnerFile.Objection(jobFolder, Folder) is { } objection)
        {
            problems.Add(objection with { Severity = Severity.NeedsPerson });
            return [];
        }

        if (!Directory.Exists(Path.Combine(jobFolder, Folder)))
        {
            return [];
        }

        var photos = ImmutableArray.CreateBuilder<PhotoFile>();
        foreach (var entry in InnerFile.In(jobFolder, Folder).Where(e => !Path.GetFileName(e.Name).StartsWith('.')))
        {
            if (Placed(entry.Name, plan) is { } photo)
            {
                photos.Add(photo);
            }
            else
            {
                problems.Add(Problem.NeedsPerson(
                    new Where(PlainText.Short(entry.Name, 100)), "It is not clear which part of the hem this shows, so it is not shown.",
                    "Call it hooping-12.jpg after its hooping, round-1.jpg for a whole round, or hem.jpg for all of it; JPEG or PNG."));
            }
        }

        return photos.ToImmutable();
    }

    private static PhotoFile? Placed(string file, StripPlan plan)
    {
        var match = Named().Match(Path.GetFileName(file));
        int number = int.TryParse(match.Groups["number"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 0;
        ImmutableArray<Hooping> hoopings = !match.Success ? []
            : match.Groups["part"].Value.ToLowerInvariant() switch
            {
                "hooping" => [.. plan.Hoopings.Where(h => h.Number == number)],
                "round" => [.. plan.Hoopings.Where(h => h.Segments.Any(s => s.Round.Number == number))],
                _ => plan.Hoopings,
            };
        bool isOfPart = match.Groups["part"].Value.ToLowerInvariant() == "hooping";
        return hoopings.IsEmpty ? null : new PhotoFile(file, hoopings, isOfPart);
    }

    [GeneratedRegex(
        @"^(?:(?<part>hooping|round)[-_ ]?0*(?<number>[1-9]\d{0,5})|(?<part>hem))(?:[-_ ].*)?\.(?:jpe?g|png)$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}
