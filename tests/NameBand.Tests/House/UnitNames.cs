using System.Reflection;
using System.Runtime.CompilerServices;

namespace NameBand.Tests.House;

/// <summary>A public number says its unit in its name, so that nobody takes inches for millimetres.</summary>
internal static class UnitNames
{
    private static readonly string[] Units =
    [
        "Mm", "Mm2", "PerMm2", "M", "M2", "Inches", "Rad", "Tex", "Minutes", "Seconds", "PerMinute", "PerMetre", "PerName", "PerJump",
        "PerTrim", "PerStop", "ToStart", "PerInch", "Factor", "Part", "Allowance", "Em", "Ratio",
    ];

    /// <summary>Names whose unit is clear from what they are; each with the reason.</summary>
    private static readonly Dictionary<string, string> Reasoned = new(StringComparer.Ordinal)
    {
        ["Turn"] = "part of a full circle, the word of the job file",
        ["Shortening"] = "part of a length, the word of the job file",
        ["MmPerInch"] = "a ratio that names both its units",
        ["Amount"] = "a work line says its unit beside it, in Unit",
        ["Low"] = "a figure has the unit of the property that holds it",
        ["Likely"] = "a figure has the unit of the property that holds it",
        ["High"] = "a figure has the unit of the property that holds it",
    };

    public static IEnumerable<string> Violations(IEnumerable<Type> types) =>
        types.Where(t => t.IsVisible).SelectMany(Violations).Distinct().Order(StringComparer.Ordinal);

    private static IEnumerable<string> Violations(Type type)
    {
        const BindingFlags OwnPublic = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        foreach (var property in type.GetProperties(OwnPublic).Where(p => IsBare(p.PropertyType) && !IsNamed(p.Name)))
        {
            yield return $"{type.FullName}.{property.Name}";
        }

        foreach (var field in type.GetFields(OwnPublic).Where(f => IsBare(f.FieldType) && !IsNamed(f.Name)))
        {
            yield return $"{type.FullName}.{field.Name}";
        }

        foreach (var method in type.GetMethods(OwnPublic).Where(m => !m.IsSpecialName && !IsMadeByCompiler(m)))
        {
            if (IsBare(method.ReturnType) && !IsNamed(method.Name))
            {
                yield return $"{type.FullName}.{method.Name}()";
            }
        }

        foreach (var method in type.GetMethods(OwnPublic).Cast<MethodBase>().Concat(type.GetConstructors(OwnPublic)).Where(m => !IsMadeByCompiler(m)))
        {
            foreach (var parameter in method.GetParameters().Where(p => IsBare(p.ParameterType) && !IsNamed(p.Name ?? "")))
            {
                yield return $"{type.FullName}.{method.Name}({parameter.Name})";
            }
        }
    }

    private static bool IsBare(Type type)
    {
        type = type.IsByRef ? type.GetElementType()! : type;
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsArray)
        {
            return IsBare(type.GetElementType()!);
        }

        return type == typeof(double) || type == typeof(float) || type == typeof(decimal)
            || (type.IsGenericType && type.GetGenericArguments().Any(IsBare));
    }

    private static bool IsNamed(string name)
    {
        string capital = name.Length > 0 ? char.ToUpperInvariant(name[0]) + name[1..] : name;
        return Reasoned.ContainsKey(capital)
            || Units.Any(u => capital.EndsWith(u, StringComparison.Ordinal) || capital.Contains(u + "Per", StringComparison.Ordinal));
    }

    private static bool IsMadeByCompiler(MethodBase method) =>
        method.IsDefined(typeof(CompilerGeneratedAttribute)) || method.Name is "Deconstruct" or "PrintMembers" or "Equals" or "GetHashCode";
}
