using System.Numerics;
using dnlib.DotNet;
using dnlib.DotNet.Emit;
using SharpFuzz.Common;

namespace NameBand.Benchmarks;

/// <summary>
/// Tells the fuzzer how near a comparison came, as if each bit of a number and each sign of a word were a branch of its own: so a
/// letter, or a word, is found step by step and not by luck. What AFL++ has for that looks at native code only.
/// </summary>
public static class ComparedValues
{
    private const int Places = 1 << 16; // As many branches as AFL++ and SharpFuzz tell apart.
    private const int MostSigns = 32; // No key or marker of ours is longer.
    private const int Bits = 16; // A letter is a UTF-16 unit.

    /// <summary>Rewrites a library so that what it compares with a constant, and words with one another, is told.</summary>
    /// <returns>How many comparisons that are.</returns>
    public static int Watch(string file)
    {
        using var module = ModuleDefMD.Load(File.ReadAllBytes(file));
        var importer = new Importer(module);
        var watches = new[]
        {
            nameof(Number), nameof(AreSame), nameof(AreOther), nameof(AreSameBy), nameof(IsSame), nameof(IsSameBy), nameof(Begins),
        }.ToDictionary(n => n, n => importer.Import(typeof(ComparedValues).GetMethod(n)), StringComparer.Ordinal);
        int site = Path.GetFileName(file).Aggregate(17, (sum, c) => unchecked((sum * 31) + c));
        int watched = 0;
        foreach (var body in module.GetTypes().SelectMany(t => t.Methods).Select(m => m.Body).OfType<CilBody>())
        {
            body.SimplifyBranches();
            for (int i = 0; i + 1 < body.Instructions.Count; i++)
            {
                Instruction[]? instead = null;
                var now = body.Instructions[i];
                if (now.IsLdcI4() && IsForSame(body.Instructions[i + 1]))
                {
                    int constant = now.GetLdcI4Value();
                    instead =
                    [
                        OpCodes.Dup.ToInstruction(), Instruction.CreateLdcI4(constant), Instruction.CreateLdcI4(Next()),
                        OpCodes.Call.ToInstruction(watches[nameof(Number)]), Instruction.CreateLdcI4(constant),
                    ];
                }
                else if (WatchOf(now) is { } watch && (i == 0 || body.Instructions[i - 1].OpCode.OpCodeType != OpCodeType.Prefix))
                {
                    instead = [Instruction.CreateLdcI4(Next()), OpCodes.Call.ToInstruction(watches[watch])];
                }

                if (instead is not null)
                {
                    // What jumps to the instruction comes to the first of those in its place.
                    (now.OpCode, now.Operand) = (instead[0].OpCode, instead[0].Operand);
                    for (int more = 1; more < instead.Length; more++)
                    {
                        body.Instructions.Insert(i + more, instead[more]);
                    }

                    i += instead.Length - 1;
                    watched++;
                }
            }

            body.OptimizeBranches();
        }

        module.Write(file);
        return watched;

        int Next() => site = unchecked((site * 1103515245) + 12345);
    }

    internal static bool IsForSame(Instruction instruction) =>
        instruction.OpCode.Code is Code.Beq or Code.Beq_S or Code.Bne_Un or Code.Bne_Un_S or Code.Ceq;

    public static void Number(int compared, int constant, int site) => Tell(site, 0, compared, constant);

    public static bool AreSame(string? one, string? other, int site)
    {
        TellWords(one, other, site);
        return one == other;
    }

    public static bool AreOther(string? one, string? other, int site) => !AreSame(one, other, site);

    public static bool AreSameBy(string? one, string? other, StringComparison by, int site)
    {
        TellWords(one, other, site);
        return string.Equals(one, other, by);
    }

    /// <summary>Asked of a string itself, which fails where there is none.</summary>
    public static bool IsSame(string one, string? other, int site)
    {
        TellWords(one, other, site);
        return one.Equals(other, StringComparison.Ordinal);
    }

    public static bool IsSameBy(string one, string? other, StringComparison by, int site)
    {
        TellWords(one, other, site);
        return one.Equals(other, by);
    }

    public static bool Begins(string text, string with, StringComparison by, int site)
    {
        TellWords(text, with, site);
        return text.StartsWith(with, by);
    }

    /// <summary>What watches a call, where it compares two strings.</summary>
    private static string? WatchOf(Instruction instruction)
    {
        if (instruction.OpCode.Code is not (Code.Call or Code.Callvirt)
            || instruction.Operand is not IMethod { MethodSig: { } called } method
            || method.DeclaringType.FullName != "System.String")
        {
            return null;
        }

        string taken = string.Join(' ', called.Params.Select(p => p.TypeName));
        return (method.Name.String, called.HasThis, taken) switch
        {
            ("op_Equality" or "Equals", false, "String String") => nameof(AreSame),
            ("op_Inequality", false, "String String") => nameof(AreOther),
            ("Equals", false, "String String StringComparison") => nameof(AreSameBy),
            ("Equals", true, "String") => nameof(IsSame),
            ("Equals", true, "String StringComparison") => nameof(IsSameBy),
            ("StartsWith", true, "String StringComparison") => nameof(Begins),
            _ => null,
        };
    }

    private static void TellWords(string? one, string? other, int site)
    {
        if (one is null || other is null)
        {
            return;
        }

        int same = one.AsSpan().CommonPrefixLength(other);
        if (same < Math.Min(Math.Min(one.Length, other.Length), MostSigns))
        {
            Tell(site, same, one[same], other[same]);
        }
    }

    private static unsafe void Tell(int site, int sign, int one, int other)
    {
        int near = Bits - Math.Min(Bits, BitOperations.PopCount((uint)(one ^ other)));
        byte* place = Trace.SharedMem + (unchecked((uint)site + ((uint)((sign * (Bits + 1)) + near) * 2654435761u)) >> 3) % Places;
        *place = Math.Max(*place, (byte)1);
    }
}
