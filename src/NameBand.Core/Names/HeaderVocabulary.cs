namespace NameBand.Names;

/// <summary>
/// The words that <see cref="HeaderWords"/> knows, comma-separated. From general knowledge of the languages, no
/// single source; a column that is not known can always be named in job.json.
/// </summary>
internal static class HeaderVocabulary
{
    public static string Display { get; } = ListWords.Of(nameof(Display));
    public static string FullName { get; } = ListWords.Of(nameof(FullName));
    public static string Name { get; } = ListWords.Of(nameof(Name));
    public static string OtherName { get; } = ListWords.Of(nameof(OtherName));
    public static string GivenName { get; } = ListWords.Of(nameof(GivenName));
    public static string FamilyName { get; } = ListWords.Of(nameof(FamilyName));
    public static string Person { get; } = ListWords.Of(nameof(Person));
    public static string LeaveOut { get; } = ListWords.Of(nameof(LeaveOut));
    public static string Public { get; } = ListWords.Of(nameof(Public));

    /// <summary>Each line one meaning, its first word the one that stands for it.</summary>
    public static string[] Private { get; } = ListWords.Lines(nameof(Private));

    // Single words of longer headers, such as "Name as it should appear on the cloak". The first are hardly ever part
    // of somebody's name; the second are sometimes, and count only where every other word of the header is known.
    public static string SureNameWords { get; } = ListWords.Of(nameof(SureNameWords));
    public static string PerhapsNameWords { get; } = ListWords.Of(nameof(PerhapsNameWords));
    public static string FillWords { get; } = ListWords.Of(nameof(FillWords));
    public static string ShowWords { get; } = ListWords.Of(nameof(ShowWords));
    public static string GivenWords { get; } = ListWords.Of(nameof(GivenWords));
    public static string FamilyWords { get; } = ListWords.Of(nameof(FamilyWords));
    public static string WholeWords { get; } = ListWords.Of(nameof(WholeWords));
    public static string NotOfAPerson { get; } = ListWords.Of(nameof(NotOfAPerson));
    public static string AnonymousStarts { get; } = ListWords.Of(nameof(AnonymousStarts));
    public static string HideStarts { get; } = ListWords.Of(nameof(HideStarts));

    // Words of a header that asks for leave: “May we print it?”, “OK to display”, “Do not put me on it”.
    public static string MayWords { get; } = ListWords.Of(nameof(MayWords));
    public static string NotWords { get; } = ListWords.Of(nameof(NotWords));
    public static string ToShowWords { get; } = ListWords.Of(nameof(ToShowWords));
    public static string AskingWords { get; } = ListWords.Of(nameof(AskingWords));

    // Words of a header that asks of the web, and of other places where a name may be shown: one that names both asks of both.
    public static string WebWords { get; } = ListWords.Of(nameof(WebWords));
    public static string MediumWords { get; } = ListWords.Of(nameof(MediumWords));

    // Parts of a header of any words that may have to do with showing a name: then it is asked about.
    public static string HintStems { get; } = ListWords.Of(nameof(HintStems));
    public static string TotalWords { get; } = ListWords.Of(nameof(TotalWords));

    // What a remark says that may be a wish not to be shown. The remark itself is never repeated.
    public static string Wishes { get; } = ListWords.Of(nameof(Wishes));
}
