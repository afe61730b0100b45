using System.Collections.Immutable;
using NameBand.Garment.Hanging;
using NameBand.Job;

namespace NameBand.Layout;

/// <summary>A name or motif where it hangs on the garment.</summary>
/// <param name="Index">Of all that is sewn, by round and then along it.</param>
/// <param name="FromPart">The part of its strip's line at which its left edge lies; so with its right one.</param>
public sealed record HungName(int Index, int Round, PlacedName Name, double FromPart, double ToPart, double AboveHemMm);

/// <summary>A plan hung up.</summary>
public sealed record HungPlan(HungGarment Garment, ImmutableArray<HungName> Names)
{
    /// <param name="skirt">Waist and length, where the job has them.</param>
    public static HungPlan Of(StripPlan plan, SkirtSettings? skirt)
    {
        var garment = HungGarment.Of(plan.Hem, skirt, [.. plan.Rounds.Select(r => (r.Number, r.LengthMm))]);
        bool isUpright = plan.Hem.ReadBy == Reader.Viewer;
        var names = plan.Rounds.Zip(garment.Strips)
            .SelectMany(p => p.First.NamesAndMotifs.Select(n => (Strip: p.Second, Name: n)))
            .Select((n, i) =>
            {
                double inset = plan.InsetMm(n.Name), middle = n.Strip.AboveHemMm + (plan.Hem.Strip.FinishedWidthMm / 2);
                return new HungName(
                    i, n.Strip.Round, n.Name, n.Strip.AlongPart(n.Name.StartMm + inset), n.Strip.AlongPart(n.Name.EndMm - inset),
                    middle + (isUpright ? n.Name.BaselineYMm : -n.Name.BaselineYMm));
            });
        return new HungPlan(garment, [.. names]);
    }
}
