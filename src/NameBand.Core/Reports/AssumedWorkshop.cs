using System.Globalization;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Reports;

/// <summary>What is taken of her machine where no workshop.json tells of it, and what to write so that it is told.</summary>
/// <param name="Text">What is assumed: a whole sentence.</param>
/// <param name="Line">A workshop.json that says the same, to be changed to what is so.</param>
public sealed record AssumedWorkshop(Said Text, string Line)
{
    /// <summary>Null where the workshop tells it, and where no machine sews names.</summary>
    public static AssumedWorkshop? Of(BandJob job)
    {
        if (job.Workshop.File is not null)
        {
            return null;
        }

        Said watched = job.Machine.IsWatched ? "that you sit by" : "that sews alone";
        var field = Wording.Size($"{job.Hoop.Along.Mm:0.#}", $"{job.Hoop.Across.Mm:0.#}");
        string pace = string.Create(CultureInfo.InvariantCulture, $"{job.Machine.StitchesPerMinute:0.#}");
        string frames = job.IsHooped
            ? ", \"frames\": [{ \"name\": \"frame\", " + string.Create(
                CultureInfo.InvariantCulture, $"\"along\": {job.Hoop.Along.Mm:0.#}, \"across\": {job.Hoop.Across.Mm:0.#} }}]")
            : "";
        var (ways, all) = (job.Traits, new List<(Said Does, string Takes)>());
        all.AddRange(ways.FollowsCoordinates ? [("follows coordinates", "coordinates")] : []);
        all.AddRange(ways.HasLettersOfItsOwn ? [("has letters of its own", "keys")] : []);
        all.AddRange(ways.IsFollowedByHand && !job.Traced.ByHand ? [("is guided by hand", "hands")] : []);
        if (all.Count == 0)
        {
            return null;
        }

        Said does = Said.Join(" and ", all.Select(a => a.Does));
        string takes = string.Join("\", \"", all.Select(a => a.Takes));
        return new AssumedWorkshop(
            $"One machine, {watched}, that {does} at {job.Machine.StitchesPerMinute:0.#} stitches a minute{(job.IsHooped ? (Said)$", with a field of {field}" : "")}.",
            $"{{ \"format\": 1, \"machines\": [{{ \"name\": \"mine\", \"takes\": [\"{takes}\"], \"stitchesPerMinute\": {pace}, "
            + $"\"watched\": {(job.Machine.IsWatched ? "true" : "false")}{frames} }}] }}");
    }
}
