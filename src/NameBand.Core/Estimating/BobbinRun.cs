using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Estimating;

/// <summary>Follows the bobbin through the whole sewing and finds where it must be changed.</summary>
internal static class BobbinRun
{
    /// <summary>
    /// A fresh bobbin goes in before every name that the one in the machine would not finish. Only a name that takes
    /// more than a whole bobbin is interrupted.
    /// </summary>
    /// <returns>The changes in sewing order, and how many bobbins are wound in all.</returns>
    public static (ImmutableArray<BobbinChange> Changes, int Bobbins) Follow(
        IEnumerable<HoopingFigures> hoopings, BobbinSettings bobbin)
    {
        double full = bobbin.UsableM;
        double left = full;
        int bobbins = 0;
        var changes = ImmutableArray.CreateBuilder<BobbinChange>();
        foreach (var hooping in hoopings)
        {
            var names = hooping.Names.IsEmpty ? [new NameThread(0, hooping.NeedleThreadM, hooping.BobbinThreadM)] : hooping.Names;
            foreach (var name in names)
            {
                bobbins = Math.Max(bobbins, 1);
                if (name.BobbinM <= left)
                {
                    left -= name.BobbinM;
                    continue;
                }

                int inName = Math.Max(0, (int)Math.Ceiling((name.BobbinM / full) - Tolerance.Rounding) - 1);
                int more = inName + (left >= full ? 0 : 1);
                changes.Add(new BobbinChange(hooping.Number, name.Order, left, inName, more));
                bobbins += more;
                left = ((inName + 1) * full) - name.BobbinM;
            }
        }

        return (changes.ToImmutable(), bobbins);
    }
}
