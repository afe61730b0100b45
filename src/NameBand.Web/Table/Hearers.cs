using System.Collections.Immutable;
using System.Globalization;

namespace NameBand.Web.Table;

/// <summary>
/// Those who are told that something changed, each in her own language: the page of one tab is drawn by the press in another,
/// whose reader may have another.
/// </summary>
internal sealed class Hearers
{
    private ImmutableArray<(Action Hear, CultureInfo Speaks, CultureInfo Counts)> _all = [];

    public void Add(Action? hear)
    {
        if (hear is not null)
        {
            ImmutableInterlocked.Update(ref _all, all => all.Add((hear, CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture)));
        }
    }

    public void Remove(Action? hear) => ImmutableInterlocked.Update(ref _all, all =>
    {
        int at = all.LastIndexOf(all.LastOrDefault(h => h.Hear == hear));
        return at < 0 ? all : all.RemoveAt(at);
    });

    public void Tell()
    {
        var (speaks, counts) = (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture);
        try
        {
            foreach (var hearer in _all)
            {
                (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture) = (hearer.Speaks, hearer.Counts);
                hearer.Hear();
            }
        }
        finally
        {
            (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture) = (speaks, counts);
        }
    }
}
