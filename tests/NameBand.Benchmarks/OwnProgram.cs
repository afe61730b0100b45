using System.Diagnostics;

namespace NameBand.Benchmarks;

/// <summary>This program once more, as a process of its own.</summary>
internal static class OwnProgram
{
    /// <summary>Started as “dotnet NameBand.Benchmarks.dll”, the process is dotnet and has to be told the program again.</summary>
    public static ProcessStartInfo Again(params IEnumerable<string> args)
    {
        string[] program = Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet"
            ? [typeof(OwnProgram).Assembly.Location] : [];
        return new ProcessStartInfo(Environment.ProcessPath!, [.. program, .. args]);
    }
}
