using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Drift;
using NameBand.Layout.Resuming;
using NameBand.MachineLetters;

namespace NameBand.Pipeline.Resume;

/// <summary>
/// Typed names as long as they were measured. A name begins at its start mark, so that end of it stays; the other one lies where the
/// needle left it, and the gaps of the rest take that up.
/// </summary>
internal static class SewnWidths
{
    /// <summary>What to go on from with the lengths that count.</summary>
    /// <param name="measured">Lengths of names on the strip.</param>
    /// <param name="forward">The first letter is sewn first.</param>
    public static Continuation Taken(Continuation going, ImmutableArray<SewnLength> measured, bool forward)
    {
        if (going.Earlier.Names.Any(n => n.OnLine > 0))
        {
            // What one line would win, the other has sewn.
            return going;
        }

        var now = new Dictionary<EarlierName, EarlierName>();
        var hoopingOf = going.Earlier.HoopingOfSegment;
        foreach (var round in going.Earlier.Rounds)
        {
            var along = round.Segments.SelectMany(s => s.Names.Select(n => (Name: n, IsSewn: going.Sewn.Contains(hoopingOf[s.Number]))))
                .OrderBy(p => p.Name.StartMm).ToList();
            for (int i = 0; i < along.Count; i++)
            {
                var name = along[i].Name;
                if (!along[i].IsSewn
                    || measured.FirstOrDefault(m => m.Name == name.Text && (m.Number ?? name.Order) == name.Order) is not { } length)
                {
                    continue;
                }

                // What lies fast is never planned one over the other, whatever a ruler says.
                double room = forward
                    ? (i + 1 < along.Count && along[i + 1].IsSewn ? along[i + 1].Name.StartMm : double.MaxValue) - name.StartMm
                    : name.StartMm + name.WidthMm
                        - (i > 0 && along[i - 1].IsSewn ? along[i - 1].Name.StartMm + along[i - 1].Name.WidthMm : double.MinValue);
                double width = Math.Min(length.LengthMm, room);
                if (Math.Abs(width - name.WidthMm) > Tolerance.ReadBackMm)
                {
                    now[name] = name with { StartMm = forward ? name.StartMm : name.StartMm + name.WidthMm - width, WidthMm = width };
                }
            }
        }

        EarlierName Now(EarlierName name) => now.GetValueOrDefault(name, name);
        return now.Count == 0 ? going : going with
        {
            Earlier = going.Earlier with
            {
                Rounds = [.. going.Earlier.Rounds.Select(r =>
                    r with { Segments = [.. r.Segments.Select(s => s with { Names = [.. s.Names.Select(Now)] })] })],
            },
            Before = going.Before.ToImmutableDictionary(b => b.Key, b => Now(b.Value)),
            RestDiffers = true,
            KeepsBaseLine = true,
            TakesUpLengths = true,
        };
    }

    /// <summary>Sewn names whose own lengths leave gaps that no longer do, where the mark after them stays.</summary>
    public static IEnumerable<Problem> KeptMarks(StripPlan plan, SewingProgress begun, ImmutableArray<SewnLength> measured, bool forward)
    {
        var now = plan.Rounds.SelectMany(r => r.Names).ToLookup(n => n.Order, n => n.StartMm);
        var sewn = begun.SewnNames();
        foreach (var line in begun.Plan.Rounds.SelectMany(r => r.Segments.SelectMany(s => s.Names).GroupBy(n => n.OnLine)))
        {
            var along = (forward ? line.OrderBy(n => n.StartMm) : line.OrderByDescending(n => n.StartMm)).ToList();
            foreach (var (name, next) in along.Zip(along.Skip(1)).Where(p => begun.IsSewn(p.First) && !sewn.Contains(p.Second)))
            {
                double planned = forward ? next.StartMm - name.StartMm - name.WidthMm : name.StartMm - next.StartMm - next.WidthMm;
                if (planned > 0 && now[next.Order].Any(mm => Math.Abs(mm - next.StartMm) < Tolerance.ReadBackMm)
                    && measured.FirstOrDefault(m => m.Name == name.Text && (m.Number ?? name.Order) == name.Order) is { } length
                    && GapBounds.Objection(
                        new Where(SewnLengths.FileName), name.Text, planned + name.WidthMm - length.LengthMm, planned, isKept: true)
                        is { } objection)
                {
                    yield return objection;
                }
            }
        }
    }

    /// <summary>Rounds whose gaps no longer do.</summary>
    public static IEnumerable<Problem> Beyond(StripPlan plan, EarlierPlan before, HashSet<RowRef> sewn)
    {
        foreach (var round in plan.Rounds)
        {
            var names = round.Names.OrderBy(n => n.StartMm).ToList();
            var gaps = names.Zip(names.Skip(1))
                .Where(p => !sewn.Contains(p.First.Lettered.Name.Row) || !sewn.Contains(p.Second.Lettered.Name.Row))
                .Select(p => p.Second.StartMm - p.First.EndMm).ToList();
            double planned = before.Rounds.Where(r => r.Number == round.Number).Select(r => r.GapMm).FirstOrDefault();
            var last = names.FindLast(n => sewn.Contains(n.Lettered.Name.Row));
            if (planned > 0 && gaps.Count > 0 && last is not null
                && GapBounds.Objection(new Where(SewnLengths.FileName), last.Lettered.Name.Text, gaps.Min(), planned) is { } objection)
            {
                yield return objection;
            }
        }
    }
}
