using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>A public number says its unit in its name, so that nobody takes inches for millimetres.</summary>
internal static partial class UnitNames
{
    private static readonly string[] Units =
        ["Mm", "Mm2", "M", "M2", "Inches", "Rad", "Tex", "Minutes", "Seconds", "Factor", "Factors", "Part", "Units", "Allowance", "Em",
            "Ratio",
            "Percent", "Degrees"];

    /// <summary>Names whose unit is clear from what they are; each with the reason.</summary>
    private static readonly Dictionary<string, string> Reasoned = new(StringComparer.Ordinal)
    {
        ["Turn"] = "part of a full circle, the word of the job file",
        ["Shortening"] = "part of a length, the word of the job file",
        ["DistanceTo"] = "between two points, in mm as they are",
        ["Stitches"] = "a number of stitches, which may be a mean",
        ["SecondsToStart"] = "seconds",
        ["ExpectedBreaks"] = "a number of breaks, a mean",
        ["Price"] = "money, in the currency of the job file",
        ["Worth"] = "money, in the currency of the job file",
        ["Total"] = "money, in the currency of the job file",
        ["PatternHoopings"] = "a number of hoopings, which a linear program takes in parts",
        ["Amount"] = "a line of the shopping list says its unit beside it, in Unit",
        ["Count"] = "an act says beside it what it is counted from, in CountedFrom",
        ["PatternBound"] = "a number of hoopings, which a linear program takes in parts",
        ["Measured"] = "a row of numbers, each in the unit of its place",
        ["MachineMinutesAtSetPace"] = "minutes, under its name in plan.json",
        ["HandsOnMinutesAtSetPace"] = "minutes, under its name in plan.json",
        ["FinishingMinutesLeft"] = "minutes, under its name in the JSON of hours",
        ["MinutesEach"] = "minutes, under its name in plan.json",
        ["From"] = "a number as the list's column has it, whatever it counts",
        ["Below"] = "a number as the list's column has it, whatever it counts",
        ["Low"] = "a figure has the unit of the property that holds it",
        ["Likely"] = "a figure has the unit of the property that holds it",
        ["High"] = "a figure has the unit of the property that holds it",
    };

    /// <summary>Types whose every number has one unit.</summary>
    private static readonly Dictionary<string, string> ReasonedTypes = new(StringComparer.Ordinal)
    {
        ["PriceSettings"] = "money, in the currency it names",
    };

    public static IEnumerable<string> Violations(IEnumerable<Type> types) =>
        types.Where(t => t.IsVisible && !ReasonedTypes.ContainsKey(t.Name)).SelectMany(Violations).Distinct().Order(StringComparer.Ordinal);

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
            bool isNamed = ElementNames(method.ReturnParameter) is { } names ? names.All(IsNamed) : IsNamed(method.Name);
            if (IsBare(method.ReturnType) && !isNamed)
            {
                yield return $"{type.FullName}.{method.Name}()";
            }
        }

        foreach (var method in type.GetMethods(OwnPublic).Cast<MethodBase>().Concat(type.GetConstructors(OwnPublic))
            .Where(m => !IsMadeByCompiler(m)))
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
            || RatioOfUnits().IsMatch(capital) || Units.Any(u => capital.EndsWith(u, StringComparison.Ordinal));
    }

    /// <summary>The names of a tuple's numbers; null where it is no tuple.</summary>
    private static IEnumerable<string>? ElementNames(ParameterInfo returned)
    {
        var parts = returned.ParameterType.IsGenericType ? returned.ParameterType.GetGenericArguments() : [];
        return returned.GetCustomAttribute<TupleElementNamesAttribute>() is { } names
            ? names.TransformNames.Zip(parts).Where(p => IsBare(p.Second)).Select(p => p.First ?? "")
            : null;
    }

    /// <summary>A ratio names both its units, as StitchesPerMinute does.</summary>
    [GeneratedRegex(@"\wPer[A-Z0-9]")]
    private static partial Regex RatioOfUnits();

    private static bool IsMadeByCompiler(MethodBase method) =>
        method.IsDefined(typeof(CompilerGeneratedAttribute)) || method.Name is "Deconstruct" or "PrintMembers" or "Equals" or "GetHashCode";
}
