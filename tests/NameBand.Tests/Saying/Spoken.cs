using System.Globalization;
using NameBand.Common;

namespace NameBand.Tests.Saying;

/// <summary>What is said while the one who reads has another language.</summary>
internal static class Spoken
{
    public static string In(string culture, Said said) => In(culture, said.ToString);

    public static T In<T>(string culture, Func<T> said)
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            return said();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }
}
