using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Localization;
using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>
/// In which language a page is: that which the environment names, else the first of the browser's that the program has. What is
/// typed is read the same in all of them.
/// </summary>
internal static class PageLanguage
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en");

    public static void Use(IApplicationBuilder app) => app.UseRequestLocalization(Of(Language.OfEnvironment, Language.Translated));

    /// <param name="named">By the environment: whoever starts the program may try a language that no visitor can ask for.</param>
    internal static RequestLocalizationOptions Of(CultureInfo? named, IEnumerable<CultureInfo> translated)
    {
        List<CultureInfo> spoken = named is null ? [English, .. translated] : [named];
        return new RequestLocalizationOptions
        {
            // Where one lives, and so whether lengths are in inches, is told by the computer and not by the language.
            DefaultRequestCulture = new RequestCulture(CultureInfo.CurrentCulture, spoken[0]),
            SupportedCultures = [CultureInfo.CurrentCulture],
            SupportedUICultures = spoken,
            RequestCultureProviders = named is null ? [new AcceptLanguageHeaderRequestCultureProvider()] : [],
        };
    }
}
