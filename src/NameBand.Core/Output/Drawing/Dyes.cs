using System.Runtime.CompilerServices;

namespace NameBand.Output.Drawing;

/// <summary>
/// The 256 colours of our pictures: undyed cotton, indigo thread, and madder, weld and ink for what is drawn on top.
/// A picture holds one byte a pixel; whatever is blended in between takes the nearest of these.
/// </summary>
internal static class Dyes
{
    public const int WeaveLevels = 12;
    public const int ThreadShades = 80;
    public const int MarkShades = 16;

    public const int Cotton = 0xF5EFE2;
    public const int TurnIn = 0xE9DFC9;
    public const int Waste = 0xDDD1B6;
    public const int Table = 0xC9B794;
    public const int Tape = 0xEBD894;
    public const int Ink = 0x2A2D4A;
    public const int Madder = 0xA03A30;
    public const int Weld = 0x9A7622;

    public const byte CottonAt = 0;
    public const byte TurnInAt = CottonAt + WeaveLevels;
    public const byte WasteAt = TurnInAt + WeaveLevels;
    public const byte TableAt = WasteAt + WeaveLevels;
    public const byte TapeAt = TableAt + WeaveLevels;
    public const byte ThreadAt = TapeAt + 1;
    public const byte MarkAt = ThreadAt + ThreadShades;
    private const int FreeAt = MarkAt + MarkShades;

    private static readonly (double At, int Colour)[] Indigo =
        [(0, 0x0E1430), (0.22, 0x1C2C5C), (0.45, 0x2E4C8E), (0.66, 0x4A70B4), (0.84, 0x8BA9DA), (1, 0xDCE7F8)];

    private static readonly (double At, int Colour)[] Basting =
        [(0, 0x8F8262), (0.4, 0xCFC3A4), (0.75, 0xF3ECDA), (1, 0xFFFDF6)];

    private static readonly int[] All = Mix();

    // Nearest colour of each cell of a 64 × 64 × 64 cube, found when first asked for; -1 until then. Two threads that
    // find the same cell at once find the same answer.
    private static readonly short[] Nearest = MakeNearest();

    public static ReadOnlySpan<int> Colours => All;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int ColourOf(byte index) => All[index];

    /// <summary>The index of the colour that lies <paramref name="alpha"/> (0–256) of the way from one to another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static byte Blend(int from, int to, int alpha)
    {
        int r = Channel(from >> 16, to >> 16, alpha);
        int g = Channel(from >> 8, to >> 8, alpha);
        int b = Channel(from, to, alpha);
        int cell = ((r >> 2) << 12) | ((g >> 2) << 6) | (b >> 2);
        short found = Nearest[cell];
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
    private static byte Find(int cell)
    {
        int r = ((cell >> 12) << 2) | 2;
        int g = (((cell >> 6) & 63) << 2) | 2;
        int b = ((cell & 63) << 2) | 2;
        int best = 0;
        int least = int.MaxValue;
        int[] all = All;
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

        Nearest[cell] = (short)best;
        return (byte)best;
    }

    private static int[] Mix()
    {
        var all = new int[256];
        foreach (var (at, colour) in new[] { (CottonAt, Cotton), (TurnInAt, TurnIn), (WasteAt, Waste), (TableAt, Table) })
        {
            for (int level = 0; level < WeaveLevels; level++)
            {
                // From a thread in the shade of its neighbours up to one that lies on top.
                double light = 0.925 + (0.1 * level / (WeaveLevels - 1));
                all[at + level] = Scaled(colour, light);
            }
        }

        all[TapeAt] = Tape;
        for (int i = 0; i < ThreadShades; i++)
        {
            all[ThreadAt + i] = OnRamp(Indigo, i / (ThreadShades - 1.0));
        }

        for (int i = 0; i < MarkShades; i++)
        {
            all[MarkAt + i] = OnRamp(Basting, i / (MarkShades - 1.0));
        }

        int free = FreeAt;
        int[] grounds = [Cotton, TurnIn, Waste, Table, Tape];

        // Shadow of the thread on cloth.
        for (int i = 1; i <= 9; i++)
        {
            all[free++] = Mixed(Cotton, ShadowOnCotton, i * 256 / 9);
        }

        // Edges of the thread, where a pixel is half cloth or half shadow.
        foreach (double shade in new[] { 0.1, 0.25, 0.4, 0.55, 0.7 })
        {
            int thread = OnRamp(Indigo, shade);
            foreach (int part in new[] { 64, 112, 160, 208 })
            {
                all[free++] = Mixed(Cotton, thread, part);
            }

            all[free++] = Mixed(ShadowOnCotton, thread, 128);
        }

        foreach (int ground in grounds)
        {
            foreach (int part in new[] { 56, 112, 168, 224 })
            {
                all[free++] = Mixed(ground, Ink, part);
            }
        }

        foreach (int ground in new[] { Cotton, TurnIn, Waste, Table })
        {
            foreach (int part in new[] { 90, 180, 256 })
            {
                all[free++] = Mixed(ground, Madder, part);
                all[free++] = Mixed(ground, Weld, part);
            }
        }

        all[free++] = Ink;
        while (free < all.Length)
        {
            all[free++] = Ink;
        }

        return all;
    }

    internal const int ShadowOnCotton = 0x8E8A8C;

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

    private static short[] MakeNearest()
    {
        var nearest = new short[64 * 64 * 64];
        Array.Fill(nearest, (short)-1);
        return nearest;
    }
}
