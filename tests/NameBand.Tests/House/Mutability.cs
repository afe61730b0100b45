using System.Reflection;
using System.Runtime.CompilerServices;

namespace NameBand.Tests.House;

/// <summary>What the rooms hand on cannot be changed afterwards.</summary>
internal static class Mutability
{
    public static IEnumerable<string> Violations(IEnumerable<Type> types) =>
        types.Where(t => t.IsVisible).SelectMany(Violations).Distinct().Order(StringComparer.Ordinal);

    private static IEnumerable<string> Violations(Type type)
    {
        const BindingFlags OwnPublic = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        foreach (var field in type.GetFields(OwnPublic).Where(f => !f.IsInitOnly && !f.IsLiteral && f.Name != "value__"))
        {
            yield return $"{type.FullName}.{field.Name} is a public field that can be written";
        }

        foreach (var property in type.GetProperties(OwnPublic))
        {
            if (property.SetMethod is { IsPublic: true } setter && !IsInit(setter) && property.GetIndexParameters().Length == 0)
            {
                yield return $"{type.FullName}.{property.Name} can be set";
            }

            if (property.PropertyType.IsArray)
            {
                yield return $"{type.FullName}.{property.Name} hands out an array, whose entries can be changed";
            }
        }
    }

    private static bool IsInit(MethodInfo setter) =>
        setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));
}
