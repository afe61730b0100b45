using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace NameBand.Tests;

/// <summary>
/// Runs classes of these tests one after the other in this process, up to the first that fails, and tells which planted faults each
/// came by: for the benchmark that plants them. In a build without any, none is told.
/// </summary>
internal static class ClassRun
{
    public const string ListVerb = "list-classes", Verb = "run-classes";

    public const int Failed = 3;

    /// <summary>Set by the benchmark, in a build of its own: the faults that were come by since they were last forgotten.</summary>
    private static readonly MethodInfo? Passed = Type.GetType("NameBand.PlantedFault, NameBand.Core")?.GetMethod("Passed");

    public static int List()
    {
        foreach (string name in Found(null).Select(c => c.TestMethod.TestClass.Class.Name).Distinct().Order(StringComparer.Ordinal))
        {
            Console.WriteLine(name);
        }

        return 0;
    }

    /// <summary>A line for each class, with tabs: its name, seconds, the first test that failed, the faults it came by.</summary>
    public static int Run(IEnumerable<string> classes)
    {
        foreach (string name in classes)
        {
            var heard = new Hearer();
            long began = Stopwatch.GetTimestamp();
            Passed?.Invoke(null, null);
            using var executor = Framework().GetExecutor(Assembly.GetExecutingAssembly().GetName());
            executor.RunTests(Found(name), heard, new Options { ["xunit.execution.DisableParallelization"] = true });
            heard.Ended.Wait();
            string seconds = Stopwatch.GetElapsedTime(began).TotalSeconds.ToString("0.00", CultureInfo.InvariantCulture);
            Console.WriteLine($"{name}\t{seconds}\t{heard.FirstFailed}\t{Passed?.Invoke(null, null)}");
            if (heard.FirstFailed.Length > 0)
            {
                return Failed;
            }
        }

        return 0;
    }

    private static XunitTestFramework Framework() => new(new Hearer()) { SourceInformationProvider = new NoSources() };

    private static List<ITestCase> Found(string? className)
    {
        var heard = new Hearer();
        using var discoverer = Framework().GetDiscoverer(Reflector.Wrap(Assembly.GetExecutingAssembly()));
        if (className is null)
        {
            discoverer.Find(false, heard, new Options());
        }
        else
        {
            discoverer.Find(className, false, heard, new Options());
        }

        heard.Ended.Wait();
        return heard.Cases;
    }

    private sealed class Hearer : Xunit.LongLivedMarshalByRefObject, IMessageSink
    {
        public List<ITestCase> Cases { get; } = [];

        public string FirstFailed { get; private set; } = "";

        public ManualResetEventSlim Ended { get; } = new();

        /// <returns>Whether it is to go on.</returns>
        public bool OnMessage(IMessageSinkMessage message)
        {
            switch (message)
            {
                case ITestCaseDiscoveryMessage found: Cases.Add(found.TestCase); break;
                case ITestFailed failed when FirstFailed.Length == 0: FirstFailed = failed.Test.DisplayName.ReplaceLineEndings(" "); break;
                case IDiscoveryCompleteMessage or ITestAssemblyFinished: Ended.Set(); break;
            }

            return FirstFailed.Length == 0;
        }
    }

    private sealed class Options : Dictionary<string, object>, ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
    {
        public TValue GetValue<TValue>(string name) => TryGetValue(name, out object? value) ? (TValue)value : default!;

        public void SetValue<TValue>(string name, TValue value) => this[name] = value!;
    }

    private sealed class NoSources : Xunit.LongLivedMarshalByRefObject, ISourceInformationProvider
    {
        public ISourceInformation GetSourceInformation(ITestCase testCase) => new SourceInformation();

        public void Dispose()
        {
        }
    }
}
