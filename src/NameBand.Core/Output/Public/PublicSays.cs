using System.Globalization;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Output.Public;

/// <summary>What the page's script says, in the language of the page; it fills in the names and the numbers.</summary>
internal static class PublicSays
{
    private const string Number = "{n}", Most = "{most}", Name = "{name}", Place = "{place}";

    /// <summary>How many names are listed at once; the script has the same number from here.</summary>
    private const int MostListed = 30;

    public static void Write(Utf8JsonWriter json, PublicMatter matter)
    {
        json.WriteNumber("most", MostListed);
        json.WriteStartObject("says");
        Write(json, "none", "No name with these letters is shown here. Some owners did not want theirs on the web.");
        Forms(json, "found", matter.Names.Count, n => Said.Plural(n, "One name.", $"{Said.Plain(Number)} names."));
        Forms(json, "more", matter.Names.Count, n => Said.Plural(
            n, $"{Said.Plain(Number)} names, the first {Said.Plain(Most)} of them shown: type more letters.",
            $"{Said.Plain(Number)} names, the first {Said.Plain(Most)} of them shown: type more letters."));
        Write(json, "where", matter.Plan.Rounds.Length == 1
            ? (Said)$"It lies in the hem, {Said.Plain(Place)}." : $"It lies in {Said.Plain(Place)}.");
        Write(json, "sewn", $"The name {Said.Plain(Name)} as it is sewn");
        Write(json, "photo", $"A photo of the hem with the name {Said.Plain(Name)}");
        Write(json, "photoOfPart", $"A photo of this part of the hem with the name {Said.Plain(Name)}");
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string key, Said said) => json.WriteString(key, said.ToString());

    /// <summary>A text for each category of plural that a number of found names can have, by CLDR's names for them.</summary>
    private static void Forms(Utf8JsonWriter json, string key, int most, Func<int, Said> said)
    {
        string language = (Language.Now?.Culture ?? CultureInfo.GetCultureInfo("en")).Name;
        json.WriteStartObject(key);
        foreach (var form in Enumerable.Range(1, Math.Max(1, most)).GroupBy(n => PluralRules.CategoryOf(language, (double)n)))
        {
            json.WriteString(form.Key, said(form.First()).ToString());
        }

        json.WriteEndObject();
    }
}
