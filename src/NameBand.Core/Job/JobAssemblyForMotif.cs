using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The part of a job that says what is sewn between names.</summary>
internal static partial class JobAssembly
{
    private const int LongestSignUnits = 8; // Code units: one sign with its accents or joiners is no longer; more is a word, and no motif.

    // What is keyed for a motif of a machine's own may be a number or a word.
    private const int LongestKeyed = 20;
    private const double NarrowestMotifMm = 0.5;
    private const double WidestMotifMm = 300;
    private static readonly Said KeyedExample =
        "{ \"letter\": \"*\" } for a sign that the machine has, or { \"letter\": \"M12\", \"width\": \"7 mm\" } with what is keyed for it and how wide it comes out";

    private static readonly (string Word, MotifKind Kind)[] Motifs =
        [("none", MotifKind.None), ("dot", MotifKind.Dot), ("diamond", MotifKind.Diamond), ("smallStar", MotifKind.SmallStar)];

    private static MotifSettings Motif(string folder, JobValues values)
    {
        if (values.Form(LayoutKeys.Motif) is not { } given)
        {
            return MotifSettings.None;
        }

        bool isKeyed = values.AreSound(JobKeys.Way, JobKeys.Ways) && WayTraits.OfAny(Ways(values)).HasLettersOfItsOwn;
        if (given.Kind == JsonKind.Text && Motifs.Any(m => m.Word == given.Text))
        {
            var kind = Motifs.First(m => m.Word == given.Text).Kind;
            if (isKeyed && kind != MotifKind.None)
            {
                values.Refuse(
                    LayoutKeys.Motif, $"The motif \"{given.Text}\" is drawn, and names that are keyed in have only what the machine has.",
                    $"Write {KeyedExample}; or \"none\".");
            }

            return new MotifSettings(kind);
        }

        JsonPiece? Of(string key) => given.Members.FirstOrDefault(m => m.Key == key)?.Value;

        var (face, width) = (Of("face"), Of("width"));
        string? letter = Of("letter") is { Kind: JsonKind.Text } text ? text.Text.Trim() : null;
        bool isSound = given.Kind == JsonKind.Group && letter is { Length: > 0 }
            && letter.Length <= (width is null ? LongestSignUnits : LongestKeyed)
            && !letter.Any(char.IsControl) && given.Members.All(m => m.Key is "letter" or "face" or "width")
            && face is null or { Kind: JsonKind.Text, Text.Length: > 0 and < 300 };
        if (isSound)
        {
            return new MotifSettings(
                MotifKind.Letter, letter,
                face is null || !MayHaveFace() ? null : JobPaths.CheckFace(folder, face.Text, LayoutKeys.Motif, values))
            {
                Width = width is null ? null : WidthOf(width),
            };
        }

        string? near = given.Kind == JsonKind.Text ? NearestWord.Find(given.Text, Motifs.Select(m => m.Word)) : null;
        values.Refuse(
            LayoutKeys.Motif, $"lettering.motif takes {LayoutKeys.Motif.Takes}, and this is {given.InWords}.",
            near is not null
            ? (Said)$"Did you mean \"{near}\"?" : "Write a word of these, or { \"letter\": \"❦\", \"face\": \"…\" } with one character.");
        return MotifSettings.None;

        bool MayHaveFace()
        {
            if (isKeyed)
            {
                values.Refuse(
                    LayoutKeys.Motif, face!, "lettering.motif.face",
                    "The motif has a face, and names that are keyed in have only what the machine has.", $"Take face out: {KeyedExample}.");
            }

            return !isKeyed;
        }

        Length? WidthOf(JsonPiece piece)
        {
            Length length = default;
            Said why = "";
            bool isLength = piece.Kind == JsonKind.Text && Length.TryParse(piece.Text, out length, out why);
            if (piece.Kind == JsonKind.Number && double.Parse(piece.Text, CultureInfo.InvariantCulture) is var mm and > 0
                and <= WidestMotifMm)
            {
                (length, isLength) = (Length.FromMm(mm), true);
            }

            if (!isKeyed)
            {
                Refuse("The motif has a width, and only a machine’s own motif needs one: a face brings its own.",
                    "Take width out, or write \"way\": \"machineLetters\".");
            }
            else if (!isLength || length.Mm is < NarrowestMotifMm or > WidestMotifMm)
            {
                Refuse(
                    isLength ? (Said)$"A motif {length.InMillimetres()} wide cannot be."
                        : why.IsEmpty ? (Said)$"width must be a length, and this is {piece.InWords}."
                        : $"width must be a length, and this is {piece.InWords}. {why}",
                    $"Sew it once, measure it from its left edge to its right edge, and write for example \"width\": \"7 mm\" ({NarrowestMotifMm} to {WidestMotifMm:0} mm).");
            }
            else
            {
                return length;
            }

            return null;

            void Refuse(Said found, Said mend) => values.Refuse(LayoutKeys.Motif, piece, "lettering.motif.width", found, mend);
        }
    }
}
