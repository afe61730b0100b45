namespace NameBand.Output.Drawing;

/// <summary>What a line is drawn with.</summary>
/// <param name="Colour">Its place in the palette.</param>
/// <param name="Strength">0: not seen; 1: covers what lies under it.</param>
/// <param name="DashPx">Length of dashes and of the gaps between them; 0 for a whole line.</param>
internal readonly record struct Ink(int Colour, double Strength = 1, double DashPx = 0)
{
    public static implicit operator Ink(int colour) => new(colour);
}
