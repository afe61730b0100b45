using System.Reflection;

namespace NameBand.Common;

/// <summary>The version of this build: what --version says, and what stands in every plan that it makes.</summary>
public static class ProgramVersion
{
    /// <summary>Without what a build adds of where it was built.</summary>
    public static string Text { get; } =
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion
            .Split('+')[0] ?? "0";
}
