using System.Text.RegularExpressions;

namespace NameBand.Job;

/// <summary>The forms in which needle paths are written.</summary>
internal static partial class JobAssembly
{
    private static FileSettings Files(JobValues values) => new(values.Flag(FileKeys.Svg), values.Flag(FileKeys.Program))
    {
        LoadMap = values.Flag(FileKeys.LoadMap),
    };

    private static ShowSettings Show(JobValues values) => new(
        (int)Certain(values, FileKeys.ThanksWidth), (int)Certain(values, FileKeys.PlaybackWidth), Certain(values, FileKeys.PlaybackSeconds))
    {
        ThanksAddress = Address(values),
    };

    /// <summary>A QR code holds no more than is easily scanned at this size.</summary>
    private static string? Address(JobValues values)
    {
        string? address = values.Text(FileKeys.ThanksAddress)?.Trim();
        if (address is { Length: > 200 } || (address is not null && address.Any(c => char.IsControl(c) || c == ' ')))
        {
            values.Refuse(
                FileKeys.ThanksAddress, "An address for a code has at most 200 signs and no blank.",
                "Write for example \"https://lantern.example/#n{number}\".");
        }

        return address is { Length: > 0 } ? address : null;
    }

    private static ProgramSettings Program(JobValues values) => new(
        Words(values, FileKeys.Start), Words(values, FileKeys.Needle), Words(values, FileKeys.Trim), Words(values, FileKeys.Stop),
        Words(values, FileKeys.End), values.Number(FileKeys.Feed));

    private static string Words(JobValues values, TextKey key)
    {
        string text = values.Text(key)!;
        if (text.Length <= 200 && ProgramWords().IsMatch(text))
        {
            return text;
        }

        values.Refuse(
            key, $"{key.Path} takes words of a program: a capital letter and a number, with a blank between two.",
            $"Write for example \"{key.Default}\".");
        return key.Default!;
    }

    [GeneratedRegex(@"^[A-Z][+-]?[0-9]{1,6}(\.[0-9]{1,6})?( [A-Z][+-]?[0-9]{1,6}(\.[0-9]{1,6})?)*$")]
    private static partial Regex ProgramWords();
}
