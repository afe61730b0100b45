namespace NameBand.Lettering;

/// <summary>Draws lettered names larger or smaller than the others; the same letter at the same size stays the same object.</summary>
internal sealed class ScaledName(double factor)
{
    private readonly Dictionary<LetterPiece, LetterPiece> _made = [];

    public LetteredName Of(LetteredName name) => factor == 1 ? name : name with
    {
        Pieces = [.. name.Pieces.Select(p => new PlacedPiece(Of(p.Piece), p.At * factor))],
        Ink = name.Ink.Scaled(factor),
    };

    private LetterPiece Of(LetterPiece piece)
    {
        if (!_made.TryGetValue(piece, out var made))
        {
            made = new LetterPiece(
                FormattableString.Invariant($"{piece.Key} · {factor:R}"), piece.Face, piece.Text, piece.Outline.Scaled(factor),
                piece.Ink.Scaled(factor));
            _made.Add(piece, made);
        }

        return made;
    }
}
