using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Resources;
using Microsoft.Extensions.Localization;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace NameBand.Common;

/// <summary>
/// A language the program has: one with a resource file, or one of the two that are made from the English to try the program with.
/// English itself is none, for it stands in the code.
/// </summary>
public sealed class Language
{
    /// <summary>Names a language in the environment, before that of the system: for those who translate.</summary>
    public const string Setting = "NAMEBAND_LANGUAGE";

    private static readonly IStringLocalizer Resources =
        new ResourceManagerStringLocalizerFactory(Options.Create(new LocalizationOptions()), NullLoggerFactory.Instance)
            .Create("NameBand.Common.Texts", typeof(Language).Assembly.GetName().Name!);

    private static readonly ConcurrentDictionary<string, Language?> All = new(StringComparer.OrdinalIgnoreCase);

    private readonly IStringLocalizer _texts;

    private Language(CultureInfo culture, IStringLocalizer texts)
    {
        Culture = culture;
        _texts = texts;
    }

    /// <summary>That of the thread; null for English, and where the program has none of it.</summary>
    public static Language? Now
    {
        get
        {
            var culture = CultureInfo.CurrentUICulture;
            return culture.Name.Length == 0 || culture.TwoLetterISOLanguageName == "en" && culture.Name != PseudoTexts.Accented
                ? null : All.GetOrAdd(culture.Name, Of);
        }
    }

    public CultureInfo Culture { get; }

    /// <summary>That which the environment names; null: none, and each reader's own is spoken where the program has it.</summary>
    public static CultureInfo? OfEnvironment =>
        Environment.GetEnvironmentVariable(Setting) is { Length: > 0 } name ? CultureInfo.GetCultureInfo(name) : null;

    /// <summary>Those that the program was built with a translation for.</summary>
    public static IReadOnlyList<CultureInfo> Translated { get; } =
        [.. typeof(Language).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "Languages").Value!
            .Split(';').Where(name => name != "en").Select(CultureInfo.GetCultureInfo)];

    /// <summary>As a page on the web names it.</summary>
    public static string NameNow => Now?.Culture.Name ?? "en";

    /// <summary>The language of a page and, where it is written the other way, its direction: attributes of <c>html</c>.</summary>
    public static string HtmlNow => $"lang=\"{NameNow}\"{(Now is { IsRightToLeft: true } ? " dir=\"rtl\"" : "")}";

    /// <summary>Made from the English: it has the two forms of English.</summary>
    internal bool IsMade => _texts is PseudoTexts;

    public bool IsRightToLeft => Culture.TextInfo.IsRightToLeft;

    /// <summary>Sets the language of all that the program does, where the environment names one.</summary>
    public static void TakeFromEnvironment()
    {
        if (OfEnvironment is { } culture)
        {
            CultureInfo.CurrentUICulture = CultureInfo.DefaultThreadCurrentUICulture = culture;
        }
    }

    /// <summary>What the language has for a key; null when it has nothing.</summary>
    internal string? Find(string key) => _texts[key] is { ResourceNotFound: false, Value: var said } ? said : null;

    /// <summary>The category of CLDR that a number has in it, such as <c>few</c>.</summary>
    public string PluralOf(double count) => PluralRules.CategoryOf(Culture.Name, count);

    private static Language? Of(string name)
    {
        if (PseudoTexts.Of(name) is { } made)
        {
            return new Language(PseudoTexts.CultureOf(name), made);
        }

        var culture = CultureInfo.GetCultureInfo(name);
        return HasResources(culture) ? new Language(culture, Resources) : null;
    }

    private static bool HasResources(CultureInfo culture)
    {
        var manager = new ResourceManager("NameBand.Common.Texts", typeof(Language).Assembly);
        for (var own = culture; own.Name.Length > 0; own = own.Parent)
        {
            if (manager.GetResourceSet(own, createIfNotExists: true, tryParents: false) is not null)
            {
                return true;
            }
        }

        return false;
    }
}
