namespace NameBand.Output.Drawing;

/// <summary>
/// The 256 places of the colours of our pictures: cloth, thread, and madder, weld and ink for what is drawn on top. A picture
/// holds one byte a pixel. What the places hold is a <see cref="DyePalette"/>'s; here stand their usual colours, undyed cotton and
/// indigo, by which drawing code calls them.
/// </summary>
internal static class Palette
{
    // How many places of the 256 the cloths, the threads and the marks have: a thread shows the most kinds of light.
    public const int WeaveLevels = 12;
    public const int ThreadShades = 80;
    public const int MarkShades = 16;

    // Colours of natural dyes and undyed cloth, as red, green and blue: our choice, by eye.
    public const int Cotton = 0xF5EFE2;
    public const int TurnIn = 0xE9DFC9;
    public const int Waste = 0xDDD1B6;
    public const int Table = 0xC9B794;
    public const int Tape = 0xEBD894;
    public const int Ink = 0x2A2D4A;
    public const int Madder = 0xA03A30;
    public const int Weld = 0x9A7622;
    public const int ShadowOnCotton = 0x8E8A8C;

    // Where each begins: one after the other, and what is left is free.
    public const byte CottonAt = 0;
    public const byte TurnInAt = CottonAt + WeaveLevels;
    public const byte WasteAt = TurnInAt + WeaveLevels;
    public const byte TableAt = WasteAt + WeaveLevels;
    public const byte TapeAt = TableAt + WeaveLevels;
    public const byte ThreadAt = TapeAt + 1;
    public const byte MarkAt = ThreadAt + ThreadShades;
    public const int FreeAt = MarkAt + MarkShades;

    public static readonly (double At, int Colour)[] Indigo =
        [(0, 0x0E1430), (0.22, 0x1C2C5C), (0.45, 0x2E4C8E), (0.66, 0x4A70B4), (0.84, 0x8BA9DA), (1, 0xDCE7F8)];

    public static readonly (double At, int Colour)[] Basting =
        [(0, 0x8F8262), (0.4, 0xCFC3A4), (0.75, 0xF3ECDA), (1, 0xFFFDF6)];
}
