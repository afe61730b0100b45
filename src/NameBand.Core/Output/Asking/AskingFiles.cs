using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output.Packet;

namespace NameBand.Output.Asking;

/// <summary>A supporter with all that belongs together: address, name, picture, place. Private.</summary>
/// <param name="Look">Mark of the picture: another one where the name looks otherwise.</param>
/// <param name="State">The word of approvals.csv; empty: nobody has asked.</param>
internal sealed record AskedOwner(FoundName Found, string Address, Said Place, string Look, string State)
{
    public string Picture => AskingFiles.Picture(Found.Placed.Order);

    /// <summary>Whether an answer is still missing.</summary>
    public bool IsMissing => State is "" or "asked";
}

/// <summary>The files of the folder private/: never copied anywhere, and named in a .gitignore of its own.</summary>
internal static class AskingFiles
{
    public const string FolderName = "private";
    public const string Ignore = ".gitignore";
    public const string Facts = "asking.json";
    public const string Letter = "letter.txt";
    public const string MailMerge = "mail-merge.csv";
    public const string Reminders = "reminders.csv";

    private static readonly string[] Columns =
        ["address", "name", "number", "picture", "place", "look", "answer_by", "state", "list", "line"];

    public static string Picture(int order) => string.Create(CultureInfo.InvariantCulture, $"pictures/name-{order:D4}.png");

    public static string LetterOf(int order) => string.Create(CultureInfo.InvariantCulture, $"letters/name-{order:D4}.txt");

    public static void WriteIgnore(Stream stream) =>
        WriteText(stream, $"# {(Said)"Addresses of people: nothing of this folder leaves this computer."}\n*\n");

    public static void WriteFacts(Stream stream, BandJob job, ImmutableArray<AskedOwner> owners)
    {
        using var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        json.WriteStartObject();
        json.WriteNumber("format", 1);
        json.WriteString("answerBy", job.Asking.AnswerBy?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        json.WriteNumber("owners", owners.Length);
        json.WriteEndObject();
    }

    public static void WriteText(Stream stream, string text) => stream.Write(Encoding.UTF8.GetBytes(text));

    public static void WriteLetter(Stream stream, BandJob job, AskedOwner owner) => WriteText(
        stream, ((Said)$"To: {owner.Address}").ToString() + "\n\n"
        + AskingLetter.Text(job, new AskedName(PlainText.OneLine(owner.Found.Text), Path.GetFileName(owner.Picture), owner.Place)));

    /// <summary>RFC 4180, UTF-8 with a byte order mark, as mail programs and spreadsheets take it.</summary>
    public static void WriteTable(Stream stream, BandJob job, IEnumerable<AskedOwner> owners)
    {
        using var writer =
            new StreamWriter(
                stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true)
            { NewLine = CsvText.LineEnd };
        writer.WriteLine(CsvText.Row(Columns));
        string day = job.Asking.AnswerBy?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";
        foreach (var owner in owners)
        {
            var row = owner.Found.Placed.Lettered.Name.Row;
            writer.WriteLine(CsvText.Row(
            [
                owner.Address, owner.Found.Text, Whole(owner.Found.Placed.Order), owner.Picture, owner.Place.English,
                owner.Look, day, owner.State, row.List, Whole(row.Line),
            ]));
        }
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
