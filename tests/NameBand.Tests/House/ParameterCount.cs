using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace NameBand.Tests.House;

/// <summary>What is handed to a method is six things at most: more of them belong together and have a name. Records hold many.</summary>
internal static class ParameterCount
{
    public const int Most = 6;

    private const BindingFlags Own =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    public static IEnumerable<string> Violations(IEnumerable<Type> types) =>
        types.Where(t => !t.FullName!.StartsWith("__Blazor", StringComparison.Ordinal) && !t.Name.Contains('<')
                && !t.IsDefined(typeof(CompilerGeneratedAttribute)))
            .SelectMany(t => t.GetMethods(Own).Cast<MethodBase>().Concat(IsRecord(t) ? [] : t.GetConstructors(Own)))
            .Where(m => m.GetParameters().Length > Most && IsWrittenByUs(m))
            .Select(m => $"{m.DeclaringType!.FullName}.{m.Name} has {m.GetParameters().Length} parameters");

    private static bool IsRecord(Type type) => type.GetMethod("PrintMembers", Own) is not null;

    /// <summary>Not made by the compiler, and not of the form that native code calls or has.</summary>
    private static bool IsWrittenByUs(MethodBase method) =>
        !method.Name.Contains('<') && !method.IsDefined(typeof(CompilerGeneratedAttribute))
        && !method.IsDefined(typeof(UnmanagedCallersOnlyAttribute)) && !method.Attributes.HasFlag(MethodAttributes.PinvokeImpl);
}
