using System.Text.RegularExpressions;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>The lent view is served a list of files and no others: what one of them imports has to be on the list too.</summary>
public sealed partial class LentFilesTests
{
    [Fact]
    public void Whatever_a_lent_script_imports_is_lent_too()
    {
        string[] lent = [.. Served().Matches(Repository.Read("src/NameBand.Web/Serving/LendServer.cs")).Select(m => m.Groups[1].Value)];
        Assert.Contains("machine-begin.js", lent);
        var wanted = lent.SelectMany(file => Imports().Matches(Repository.Read("src/NameBand.Web/wwwroot/" + file))
            .Select(m => Path.Combine(Path.GetDirectoryName(file)!, m.Groups[1].Value).Replace('\\', '/'))).ToList();
        Assert.True(wanted.Count >= lent.Length / 2);
        Assert.Equal([], wanted.Except(lent).ToArray());
    }

    [GeneratedRegex("""\["([a-z/-]+\.js)"\] =""")]
    private static partial Regex Served();

    [GeneratedRegex("""from '\./([a-z/-]+\.js)'""")]
    private static partial Regex Imports();
}
