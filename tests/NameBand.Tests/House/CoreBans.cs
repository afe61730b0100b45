using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>What the core never touches: it must give the same bytes for the same input, and knows no console and no web.</summary>
internal static class CoreBans
{
    private const string NewGuid = @"\bGuid\s*\.\s*NewGuid\b";
    private const string Wait = @"\bThread\s*\.\s*Sleep\b";

    private const string Culture = @"\bCurrent(UI)?Culture\b";

    private static readonly Dictionary<(string Path, string Pattern), string> Allowed = new()
    {
        [("src/NameBand.Core/Job/JobLock.cs", NewGuid)] = "tells two writers apart; never reaches an output",
        [("src/NameBand.Core/Common/Language.cs", Culture)] = "what people read follows their language; LanguageTests hold the rest",
        [("src/NameBand.Core/Job/JobLock.cs", Wait)] = "asks again for a lock that somebody has for a moment",
        [("src/NameBand.Core/Common/Disk.cs", Wait)] = "asks Windows again for what another program holds",
    };

    private static readonly (string Pattern, string Why)[] Bans =
    [
        (@"\bConsole\s*\.", "the core has no console"),
        (@"\bSpectre\b", "the core has no console"),
        (@"\bMicrosoft\s*\.\s*AspNetCore\b", "the core has no web"),
        (@"\bDateTime(Offset)?\s*\.\s*(Now|UtcNow|Today)\b", "the core has no wall clock"),
        (@"\bTimeProvider\b", "the core has no wall clock"),
        (@"\bStopwatch\b", "the core has no clock"),
        (@"\bEnvironment\s*\.\s*TickCount", "the core has no clock"),
        (Wait, "the core does not wait"),
        (@"\bTask\s*\.\s*Delay\b", "the core does not wait"),
        (@"\bnew\s+Random\s*\(\s*\)", "chance without a seed gives other bytes each time"),
        (@"\bRandom\s*\.\s*Shared\b", "chance without a seed gives other bytes each time"),
        (NewGuid, "chance without a seed gives other bytes each time"),
        (Culture, "the same bytes come out under every culture"),
        (@"\bTimeZoneInfo\s*\.\s*Local\b", "the same bytes come out in every time zone"),
    ];

    public static IEnumerable<string> Violations(SourceFile file)
    {
        string code = CodeText.Of(file.Text);
        return Bans.Where(b => !Allowed.ContainsKey((file.Path, b.Pattern)) && Regex.IsMatch(code, b.Pattern))
            .Select(b => $"{file.Path}: {Regex.Match(code, b.Pattern).Value}: {b.Why}");
    }
}
