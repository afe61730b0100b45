using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Widths;
using NameBand.Names;

namespace NameBand.MachineLetters;

/// <summary>What a machine has to sew between names: a sign of its letters, or a motif of its own with the width it comes out at.</summary>
internal sealed class MachineMotif
{
    /// <summary>A lozenge stands for a motif whose look nobody but the machine knows: as high as this part of a capital.</summary>
    private const double StandInPart = 0.6;

    private readonly double? _widthMm;

    private MachineMotif(string keyed, double? widthMm) => (Keyed, _widthMm) = (keyed, widthMm);

    /// <summary>What is keyed for it.</summary>
    public string Keyed { get; }

    /// <summary>The sign that a similar face is asked for, to draw it.</summary>
    public ImmutableArray<string> Drawn => Letters.Of(Keyed).Count == 1 ? [Keyed] : [];

    /// <returns>Null for none, or where the machine has no such sign: then a problem says so.</returns>
    public static Result<MachineMotif> Of(BandJob job, LetterKnowledge known, Func<string, bool> has)
    {
        if (job.Motif is not { Kind: MotifKind.Letter, Letter: { } keyed })
        {
            return Result.Fail<MachineMotif>();
        }

        if (job.Motif.Width is { } width)
        {
            return Result.Of(new MachineMotif(keyed, width.Mm));
        }

        string[] lacking = [.. known.Keys.Of(keyed).Where(l => !has(l)).Distinct()];
        return lacking.Length == 0 ? Result.Of(new MachineMotif(keyed, null)) : Result.Fail<MachineMotif>(Problem.NeedsPerson(
            new Where(JobReader.FileName, Key: LayoutKeys.Motif.Path),
            $"No motif is sewn: “{PlainText.Short(keyed)}” is not one of the machine’s letters.",
            $"If it is a motif that the machine has, say how wide it comes out: \"motif\": {{ \"letter\": \"{PlainText.Short(keyed)}\", \"width\": \"7 mm\" }}. "
            + $"Or add the sign to letters.has, or choose another."));
    }

    /// <summary>As it is sewn at a setting, at a letter height of 1 mm.</summary>
    public LetteredName? At(NameComposer composer)
    {
        var named = new Name(Keyed, new RowRef("", 0));
        if (_widthMm is not { } widthMm)
        {
            return composer.Compose(named) is { } made ? made with { KeepsSize = true } : null;
        }

        double width = widthMm / composer.Step.HeightMm;
        return new LetteredName(
            named, composer.Stretched(Keyed, width) is { Length: > 0 } drawn ? drawn : StandIn(width), new Box(0, 0, width, 1))
        {
            KeepsSize = true,
        };
    }

    /// <summary>How long it comes out, with its range.</summary>
    public Foretold Foretell(NameComposer composer, double readingErrorMm) => _widthMm is { } width
        ? new Foretold(width, readingErrorMm, width - (2 * readingErrorMm), width + (2 * readingErrorMm))
            : composer.Foretell(composer.Keys.Of(Keyed));

    private ImmutableArray<PlacedPiece> StandIn(double width)
    {
        double half = StandInPart / 2;
        var outline =
            new Outline([new Ring([new Point(width, 0.5), new Point(width / 2, 0.5 + half), new Point(0, 0.5),
            new Point(width / 2, 0.5 - half)])]);
        return [new PlacedPiece(new LetterPiece(
            FormattableString.Invariant($"motif-of-machine: {width:R}"), "", Keyed, outline, outline.Bounds()), new Point(0, 0))];
    }
}
