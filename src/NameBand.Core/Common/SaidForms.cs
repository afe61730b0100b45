namespace NameBand.Common;

/// <summary>A text that differs with a number. English has two forms; a language has those that CLDR gives it.</summary>
internal sealed record SaidForms(double Count, Said One, Said Several)
{
    public string Text(Language? language)
    {
        var english = Count == 1 ? One : Several;
        return (language is null ? null : language.IsMade ? english.Translated(language, null)
            : Several.Translated(language, language.PluralOf(Count))) ?? english.Text(null);
    }
}
