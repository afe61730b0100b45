using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout.Lines;

/// <summary>
/// Names that come later stand below a name that stands alone, where the gaps beside it leave them room: nothing else moves for them,
/// and the strip gets no longer.
/// </summary>
/// <param name="lowerLineYMm">Base line of the lower line.</param>
/// <param name="fits">Whether two names as one fit the strip.</param>
internal sealed class LonePartners(TwoLines lines, Sizing sizing, double heightMm, double lowerLineYMm, Func<LetteredName, bool> fits)
{
    /// <param name="newcomers">In the order in which they are listed.</param>
    /// <param name="lastOrder">The highest number that any name has.</param>
    public ImmutableArray<KeptBlock> Fill(ImmutableArray<KeptBlock> blocks, IReadOnlyList<LetteredName> newcomers, int lastOrder)
    {
        var left = newcomers.Where(n => !n.Standing.IsHeading).ToList();
        return [.. blocks.Select(b => b.IsSewn || left.Count == 0 ? b : Filled(b))];

        KeptBlock Filled(KeptBlock block)
        {
            var places = PlacesAlong.Of(block.Names).ToList();
            var added = new List<PlacedName>();
            for (int i = 0; i < places.Count; i++)
            {
                if (places[i] is [{ Line: 1, IsGone: false, IsHeading: false } alone] && Partner(block, places, i, alone) is { } partner)
                {
                    added.Add(partner);
                }
            }

            return added.Count == 0 ? block : block with { Names = [.. PlacesAlong.Of(block.Names.Concat(added)).SelectMany(p => p)] };
        }

        PlacedName? Partner(KeptBlock block, List<ImmutableArray<PlacedName>> places, int at, PlacedName alone)
        {
            double gap = sizing.GapMm(heightMm);
            double before = at == 0 ? block.StartMm : places[at - 1].Max(n => n.EndMm) + gap;
            double after = at == places.Count - 1 ? block.StartMm + block.LengthMm : places[at + 1].Min(n => n.StartMm) - gap;
            double beside = Math.Max(0, Math.Min(alone.StartMm - before, after - alone.EndMm));
            var own = alone.Lettered;
            var found = left.Find(n =>
                n.Way == own.Way && NamePairing.AreAlike(n, own) && sizing.WidthMm(n, heightMm) <= alone.WidthMm + (2 * beside)
                + Tolerance.RoundingMm
                && lines.CanStand(own, n) && fits(lines.AsOne(own, n)));
            if (found is null)
            {
                return null;
            }

            left.Remove(found);
            double width = sizing.WidthMm(found, heightMm);
            return new PlacedName(found, alone.StartMm + ((alone.WidthMm - width) / 2), width, lowerLineYMm, ++lastOrder) { Line = 2 };
        }
    }
}
