using System.Diagnostics;
using System.Xml.Linq;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>
/// What a double click on NameBand.app does, with a program and a window in the place of the real ones: the script is the one of
/// the bundle. On a Mac it was never run.
/// </summary>
public sealed class MacStarterTests : IDisposable
{
    private const string Starters = "src/NameBand.Cli/Bundles/starters/";
    private const string Said = "The worktable is open on this computer only.\nhttp://127.0.0.1:5000/open/abcd\n";

    private readonly TemporaryFolder _mac = new();

    public MacStarterTests()
    {
        Put("NameBand.app/Contents/MacOS/NameBand", Repository.Read(Starters + "mac-app.sh"));
        Put("tools/osascript", "#!/bin/sh\ncat >\"$WINDOW\"\nls \"$TMPDIR\" | wc -l >\"$WINDOW.kept\"\n");
        Directory.CreateDirectory(_mac["tmp"]);
    }

    public void Dispose() => _mac.Dispose();

    [Fact]
    public void It_opens_the_names_beside_it_says_where_it_is_and_ends_with_its_window()
    {
        Program($"printf '%s' '{Said}'\nprintf '%s' \"$2\" >\"$WINDOW.job\"\necho $$ >\"$WINDOW.pid\"\nexec sleep 600");
        Start("Her \"own\" walk");

        Assert.Equal(_mac["Her \"own\" walk/My names"], File.ReadAllText(_mac["window.job"]));
        string window = File.ReadAllText(_mac["window"]);
        Assert.Contains("open this address there: http://127.0.0.1:5000/open/abcd\n", window, StringComparison.Ordinal);
        Assert.Contains("Your names lie in " + _mac["Her \\\"own\\\" walk/My names"] + "\n", window, StringComparison.Ordinal);
        Assert.Equal("1", File.ReadAllText(_mac["window.kept"]).Trim());
        Assert.Empty(Directory.GetFiles(_mac["tmp"]));
        Assert.False(Directory.Exists("/proc/" + File.ReadAllText(_mac["window.pid"]).Trim()), "The program outlives its window.");
    }

    /// <summary>macOS starts what was just unpacked from a place of its own, where nothing that is written is found again.</summary>
    [Fact]
    public void Started_from_elsewhere_it_keeps_the_names_in_the_home_folder()
    {
        Program("echo 'http://x'\nprintf '%s' \"$2\" >\"$WINDOW.job\"\nexec sleep 600");
        Start("AppTranslocation/1");
        Assert.Equal(_mac["home/NameBand/My names"], File.ReadAllText(_mac["window.job"]));
    }

    [Fact]
    public void What_keeps_it_from_starting_is_told()
    {
        Program("echo 'The port is \"taken\".' >&2\nexit 2");
        Start("walk");
        Assert.Contains("could not start. It said: The port is \\\"taken\\\".", File.ReadAllText(_mac["window"]), StringComparison.Ordinal);
    }

    [Fact]
    public void The_folder_is_one_that_a_mac_starts()
    {
        var keys = XDocument.Parse(Repository.Read(Starters + "mac-app.plist")).Root!.Element("dict")!.Elements().ToList();
        var of = keys.Where(k => k.Name == "key").ToDictionary(k => k.Value, k => keys[keys.IndexOf(k) + 1].Value);
        Assert.Equal(("APPL", "NameBand"), (of["CFBundlePackageType"], of["CFBundleExecutable"]));
        string bundles = Repository.Read("src/NameBand.Cli/Bundles/Bundles.proj");
        Assert.Contains("$(App)MacOS/NameBand", bundles, StringComparison.Ordinal);
        Assert.Contains("$(App)Info.plist", bundles, StringComparison.Ordinal);
        string starter = Repository.Read(Starters + "open-the-worktable.sh");
        Assert.Contains("$here/NameBand.app/Contents/Resources/program/nameband", starter, StringComparison.Ordinal);
    }

    private void Program(string script) => Put("NameBand.app/Contents/Resources/program/nameband", "#!/bin/sh\n" + script + "\n");

    private void Put(string name, string script)
    {
        _mac.With(name, script);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(_mac[name], UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    private void Start(string folder)
    {
        Directory.CreateDirectory(_mac[folder]);
        Directory.Move(_mac["NameBand.app"], _mac[folder + "/NameBand.app"]);
        var start = new ProcessStartInfo("/bin/sh", [_mac[folder + "/NameBand.app/Contents/MacOS/NameBand"]]);
        start.Environment["PATH"] = $"{_mac["tools"]}:/usr/bin:/bin";
        start.Environment["HOME"] = _mac["home"];
        start.Environment["TMPDIR"] = _mac["tmp"];
        start.Environment["WINDOW"] = _mac["window"];
        using var started = Process.Start(start)!;
        started.WaitForExit();
    }
}
