using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output.Drawing;

/// <summary>
/// The colours of one cloth and its threads at the places of <see cref="Palette"/>; whatever is blended in between takes the
/// nearest of them.
/// On dark cloth ink and what else is drawn on top is light, and the table dark, so that all of it can be read.
/// </summary>
internal sealed class DyePalette
{
    private const int Paper = 0xFFFFFF; // White: what is brightened is mixed with it.

    /// <summary>More threads than a picture has room for share the last one's colours.</summary>
    private const int MostThreads = 8;

    private static readonly ConcurrentDictionary<string, DyePalette> Known = new(StringComparer.Ordinal);

    private readonly int _ink = Palette.Ink;
    private readonly int _madder = Palette.Madder;
    private readonly int _weld = Palette.Weld;
    private readonly int _cotton = Palette.Cotton;
    private readonly int _turnIn = Palette.TurnIn;
    private readonly int _waste = Palette.Waste;
    private readonly int _table = Palette.Table;
    private readonly int _tape = Palette.Tape;
    private readonly int _shadow = Palette.ShadowOnCotton;
    private readonly ImmutableArray<CssColour?> _spun;
    private readonly (double At, int Colour)[][] _threads;
    private readonly int[] _all;

    // Nearest colour of each cell of a 64 × 64 × 64 cube, found when first asked for; -1 until then. Two threads that
    // find the same cell at once find the same answer.
    private readonly short[] _nearest = new short[64 * 64 * 64];

    private DyePalette(CssColour? cloth, ImmutableArray<CssColour?> threads)
    {
        if (cloth is { } dyed)
        {
            (_cotton, _shadow) = (dyed.Number, Scaled(dyed.Number, 0.58));
            var lightInk = CssColour.Of(0xF3EFE4);
            bool isDark = dyed.ContrastRatio(lightInk) > dyed.ContrastRatio(CssColour.Of(Palette.Ink));
            (_turnIn, _waste) = isDark
                ? (Mixed(_cotton, Paper, 20), Mixed(_cotton, Paper, 38)) : (Scaled(_cotton, 0.94), Scaled(_cotton, 0.88));
            if (isDark)
            {
                (_ink, _madder, _weld, _table, _tape) = (lightInk.Number, 0xFF9A8C, 0xE6C35C, 0x40382A, 0x57502E);
            }
        }

        _spun = threads;
        _threads = [.. threads.Select(t => t is { } spun ? Ramp(spun.Number) : Palette.Indigo)];
        _all = Mix();
        Array.Fill(_nearest, (short)-1);
    }

    public static DyePalette Usual { get; } = new(null, [null]);

    /// <param name="thread">Of what is drawn; null: the job's.</param>
    public static DyePalette Of(PlanColours colours, CssColour? thread = null) => Of(colours, [thread]);

    /// <param name="threads">Of all that is drawn; null: the job's.</param>
    public static DyePalette Of(PlanColours colours, ImmutableArray<CssColour?> threads)
    {
        ImmutableArray<CssColour?> own =
            [.. threads.Select(t => t ?? colours.Job.Thread).DefaultIfEmpty(colours.Job.Thread).Distinct().OrderBy(t => t?.Number ?? -1)
            .Take(MostThreads)];
        return colours.Cloth is null && own is [null] ? Usual
            : Known.GetOrAdd(
                $"{colours.Cloth} {string.Join(' ', own.Select(t => t?.ToString() ?? "usual"))}", _ => new DyePalette(colours.Cloth, own));
    }

    /// <summary>Where the shades of a thread begin, dark to light, and how many there are.</summary>
    /// <param name="thread">Null: the only one, or the usual one.</param>
    public (byte At, int Shades) ShadesOf(CssColour? thread)
    {
        int shades = Palette.ThreadShades / _spun.Length;
        int place = _spun.IndexOf(thread) is >= 0 and var at ? at : _spun.Length - 1;
        return ((byte)(Palette.ThreadAt + (place * shades)), shades);
    }

    private static (double At, int Colour)[] Ramp(int own) =>
        [(0, Scaled(own, 0.28)), (0.22, Scaled(own, 0.6)), (0.45, own), (0.66, Mixed(own, Paper, 46)), (0.84, Mixed(own, Paper, 112)),
            (1, Mixed(own, Paper, 218))];

    public ReadOnlySpan<int> Colours => _all;

    public int Shadow => _shadow;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int ColourOf(byte index) => _all[index];

    /// <summary>What stands here for a colour that drawing code calls by its usual one.</summary>
    public int Own(int usual) => usual switch
    {
        Palette.Ink => _ink,
        Palette.Madder => _madder,
        Palette.Weld => _weld,
        Palette.Cotton => _cotton,
        Palette.TurnIn => _turnIn,
        Palette.Waste => _waste,
        Palette.Table => _table,
        Palette.Tape => _tape,
        _ => usual,
    };

    /// <summary>The index of the colour that lies <paramref name="alpha"/> (0–256) of the way from one to another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public byte Blend(int from, int to, int alpha)
    {
        int r = Channel(from >> 16, to >> 16, alpha);
        int g = Channel(from >> 8, to >> 8, alpha);
        int b = Channel(from, to, alpha);
        int cell = ((r >> 2) << 12) | ((g >> 2) << 6) | (b >> 2);
        short found = _nearest[cell];
        return found >= 0 ? (byte)found : Find(cell);
    }

    /// <summary>As <see cref="Blend"/>, but the colour itself.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Mixed(int from, int to, int alpha) =>
        (Channel(from >> 16, to >> 16, alpha) << 16) | (Channel(from >> 8, to >> 8, alpha) << 8) | Channel(from, to, alpha);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Channel(int from, int to, int alpha)
    {
        from &= 0xFF;
        return from + (((((to & 0xFF) - from) * alpha) + 128) >> 8);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private byte Find(int cell)
    {
        int r = ((cell >> 12) << 2) | 2;
        int g = (((cell >> 6) & 63) << 2) | 2;
        int b = ((cell & 63) << 2) | 2;
        int best = 0;
        int least = int.MaxValue;
        int[] all = _all;
        for (int i = 0; i < all.Length; i++)
        {
            int dr = (all[i] >> 16) - r;
            int dg = ((all[i] >> 8) & 0xFF) - g;
            int db = (all[i] & 0xFF) - b;
            int distance = (2 * dr * dr) + (4 * dg * dg) + (3 * db * db);
            if (distance < least)
            {
                least = distance;
                best = i;
            }
        }

        _nearest[cell] = (short)best;
        return (byte)best;
    }

    private int[] Mix()
    {
        int[] all = new int[256];
        foreach (var (at, colour) in new[]
        {
            (Palette.CottonAt, _cotton), (Palette.TurnInAt, _turnIn), (Palette.WasteAt, _waste), (Palette.TableAt, _table),
        })
        {
            for (int level = 0; level < Palette.WeaveLevels; level++)
            {
                // From a thread in the shade of its neighbours up to one that lies on top.
                double light = 0.925 + (0.1 * level / (Palette.WeaveLevels - 1));
                all[at + level] = Scaled(colour, light);
            }
        }

        all[Palette.TapeAt] = _tape;
        int shades = Palette.ThreadShades / _threads.Length;
        for (int i = 0; i < Palette.ThreadShades; i++)
        {
            int which = Math.Min(i / shades, _threads.Length - 1);
            all[Palette.ThreadAt + i] = OnRamp(_threads[which], Math.Min((i - (which * shades)) / (shades - 1.0), 1));
        }

        for (int i = 0; i < Palette.MarkShades; i++)
        {
            all[Palette.MarkAt + i] = OnRamp(Palette.Basting, i / (Palette.MarkShades - 1.0));
        }

        int free = Palette.FreeAt;
        int[] grounds = [_cotton, _turnIn, _waste, _table, _tape];

        // Shadow of the thread on cloth.
        for (int i = 1; i <= 9; i++)
        {
            all[free++] = Mixed(_cotton, _shadow, i * 256 / 9);
        }

        // Edges of the thread, where a pixel is half cloth or half shadow.
        double[] edges = _threads.Length switch { 1 or 2 => [0.1, 0.25, 0.4, 0.55, 0.7], <= 5 => [0.25, 0.55], _ => [0.4] };
        foreach (var (ramp, shade) in _threads.SelectMany(t => edges.Select(e => (t, e))))
        {
            int thread = OnRamp(ramp, shade);
            foreach (int part in new[] { 64, 112, 160, 208 })
            {
                all[free++] = Mixed(_cotton, thread, part);
            }

            all[free++] = Mixed(_shadow, thread, 128);
        }

        foreach (int ground in grounds)
        {
            foreach (int part in new[] { 56, 112, 168, 224 })
            {
                all[free++] = Mixed(ground, _ink, part);
            }
        }

        foreach (int ground in new[] { _cotton, _turnIn, _waste, _table })
        {
            foreach (int part in new[] { 90, 180, 256 })
            {
                all[free++] = Mixed(ground, _madder, part);
                all[free++] = Mixed(ground, _weld, part);
            }
        }

        while (free < all.Length)
        {
            all[free++] = _ink;
        }

        return all;
    }

    private static int Scaled(int colour, double by) =>
        (Part(colour >> 16, by) << 16) | (Part(colour >> 8, by) << 8) | Part(colour, by);

    private static int Part(int channel, double by) => (int)Math.Clamp(Math.Round((channel & 0xFF) * by), 0, 255);

    private static int OnRamp((double At, int Colour)[] ramp, double at)
    {
        for (int i = 1; i < ramp.Length; i++)
        {
            if (at <= ramp[i].At)
            {
                double part = (at - ramp[i - 1].At) / (ramp[i].At - ramp[i - 1].At);
                return Mixed(ramp[i - 1].Colour, ramp[i].Colour, (int)Math.Round(part * 256));
            }
        }

        return ramp[^1].Colour;
    }
}
