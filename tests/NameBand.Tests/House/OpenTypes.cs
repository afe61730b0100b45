using System.Reflection;
using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>
/// A type is open to other projects only if they name it, use what it adds to another type, or get it from one that they name:
/// in a signature, a base or a type argument.
/// </summary>
internal static partial class OpenTypes
{
    private const BindingFlags Open = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    /// <param name="sources">Of the projects outside.</param>
    public static IEnumerable<string> Violations(IEnumerable<Type> types, IEnumerable<string> sources)
    {
        var words = sources.SelectMany(s => Words().Matches(s)).Select(m => m.Value).ToHashSet(StringComparer.Ordinal);
        var open = types.Where(t => t.IsVisible && !t.IsNested && !t.Name.Contains('<')).ToList();
        var needed = new HashSet<Type>();
        var waiting = new Stack<Type>(open.Where(t => words.Contains(NameOf(t)) || (IsOnlyMethods(t) && Methods(t).Any(words.Contains))));
        while (waiting.TryPop(out var type))
        {
            if (needed.Add(type))
            {
                foreach (var next in Given(type).SelectMany(Parts))
                {
                    waiting.Push(next);
                }
            }
        }

        return open.Except(needed).Select(t => $"{t.FullName} is public, and nobody outside can come to it").Order(StringComparer.Ordinal);
    }

    private static bool IsOnlyMethods(Type type) => type is { IsAbstract: true, IsSealed: true };

    private static IEnumerable<string> Methods(Type type) =>
        type.GetMethods(BindingFlags.Public | BindingFlags.Static).Select(m => m.Name.Replace("get_", "", StringComparison.Ordinal));

    private static string NameOf(Type type) => type.Name.Split('`')[0];

    /// <summary>All types that one hands on to whoever can see it.</summary>
    private static IEnumerable<Type> Given(Type type)
    {
        var methods = type.GetMethods(Open).Cast<MethodBase>().Concat(type.GetConstructors(Open)).Where(m => m.IsPublic || m.IsFamily);
        return type.GetInterfaces()
            .Concat(type.BaseType is { } below ? [below] : [])
            .Concat(type.GetFields(Open).Where(f => f.IsPublic || f.IsFamily).Select(f => f.FieldType))
            .Concat(methods.SelectMany(m => m.GetParameters().Select(p => p.ParameterType)))
            .Concat(methods.OfType<MethodInfo>().Select(m => m.ReturnType))
            .Concat(type.GetNestedTypes().SelectMany(Given));
    }

    /// <summary>Itself and what it is made of: elements, type arguments, the type it is written in.</summary>
    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.HasElementType)
        {
            return Parts(type.GetElementType()!);
        }

        var own = type.IsGenericParameter ? [] : new[] { type.IsGenericType ? type.GetGenericTypeDefinition() : type };
        return own.Concat(type.GetGenericArguments().Where(a => !a.IsGenericParameter).SelectMany(Parts))
            .Concat(type is { IsGenericParameter: false, DeclaringType: { } around } ? Parts(around) : []);
    }

    [GeneratedRegex(@"\b\p{Lu}\w+\b")]
    private static partial Regex Words();
}
