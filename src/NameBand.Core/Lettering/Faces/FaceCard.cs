using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Lettering.Faces;

/// <summary>What a folder of fonts-open says of its face (face.json).</summary>
/// <param name="Folder">Name of the folder, unique on the shelf.</param>
/// <param name="File">Name of the font file in it.</param>
/// <param name="Source">Where the unmodified file was taken from.</param>
/// <param name="Reason">One line: why it is on the shelf.</param>
/// <param name="Fallback">Place in the chain that is asked for letters the chosen face lacks; null: only when chosen.</param>
/// <param name="Scripts">ISO 15924 codes of the scripts for which the chain asks it; empty: for any.</param>
public sealed record FaceCard(
    string Folder, string Name, string File, string Licence, string Copyright, string Source, Said Reason,
    int? Fallback, ImmutableArray<string> Scripts)
{
    /// <summary>Thinnest stroke as a part of the letter height, measured once and kept; null where the card does not say.</summary>
    public double? ThinnestStrokePart { get; init; }

    /// <summary>Main stem as a part of the letter height, measured once and kept; null where the card does not say.</summary>
    public double? MainStemPart { get; init; }

    /// <summary>Smallest closed counter as a part of the letter height, measured once and kept; null where the card does not say.</summary>
    public double? SmallestCounterPart { get; init; }

    /// <summary>What its letters look like, for machines whose letters look alike; null: it stands for none.</summary>
    public LetterLook? Look { get; init; }

    /// <summary>It sets sheets, and names are not sewn in it.</summary>
    public bool IsForSheets { get; init; }

    /// <summary>Reads a card, or null when it is not one.</summary>
    internal static FaceCard? Read(string path)
    {
        try
        {
            using var json = JsonDocument.Parse(System.IO.File.ReadAllBytes(path));
            var card = json.RootElement;
            string Text(string key) => card.GetProperty(key).GetString() ?? throw new JsonException();
            return new FaceCard(
                Path.GetFileName(Path.GetDirectoryName(path))!, Text("name"), Text("file"), Text("licence"), Text("copyright"),
                Text("source"), Said.OfKey(Text("reason")),
                card.TryGetProperty("fallback", out var place) ? place.GetInt32() : null,
                card.TryGetProperty("scripts", out var scripts) ? [.. scripts.EnumerateArray().Select(s => s.GetString()!)] : [])
            {
                ThinnestStrokePart = card.TryGetProperty("thinnestStroke", out var thinnest) ? thinnest.GetDouble() : null,
                MainStemPart = card.TryGetProperty("mainStem", out var stem) ? stem.GetDouble() : null,
                SmallestCounterPart = card.TryGetProperty("smallestCounter", out var counter) ? counter.GetDouble() : null,
                Look = card.TryGetProperty("look", out var look) && Enum.TryParse(look.GetString(), ignoreCase: true, out LetterLook known)
                ? known : null,
                IsForSheets = card.TryGetProperty("for", out var use) && use.GetString() == "sheets",
            };
        }
        catch (Exception error) when (error is JsonException or KeyNotFoundException or InvalidOperationException or FormatException
            or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
