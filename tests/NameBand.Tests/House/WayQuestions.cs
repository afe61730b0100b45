using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>Only the job's reader and the choice of a way ask which way names go; all else goes by what a way does.</summary>
internal static partial class WayQuestions
{
    private const string Reader = "src/NameBand.Core/Job/";
    private const string Choice = "src/NameBand.Core/Pipeline/Ways/WayChoice.cs";

    public static IEnumerable<string> Violations(SourceFile file) =>
        file.Path.StartsWith(Reader, StringComparison.Ordinal) || file.Path == Choice ? []
        : Question().Matches(Code(file)).Select(m => $"{file.Path}: asks {m.Value}");

    /// <summary>Markup is looked at as it stands: its code is not in one place.</summary>
    private static string Code(SourceFile file) =>
        file.Path.EndsWith(".cs", StringComparison.Ordinal) ? CodeText.Of(file.Text) : file.Text;

    [GeneratedRegex(@"\bWay\s*\.\s*(NeedlePath|MachineLetters|Traced)\b")]
    private static partial Regex Question();
}
