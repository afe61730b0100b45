using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace NameBand.Benchmarks;

/// <summary>A place in the sources where something is turned round.</summary>
/// <param name="File">From the project's folder, with slashes.</param>
/// <param name="Turned">What would stand there.</param>
internal sealed record PlantedFault(string File, int Line, TextSpan Span, string Was, string Turned)
{
    public string Room => File.Split('/')[2];

    public string Said => $"{File}:{Line}  {OnOneLine(Was)}  →  {OnOneLine(Turned)}";

    private static string OnOneLine(string code) => string.Join(' ', code.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}

/// <summary>
/// Finds where a comparison, a sign, a truth value, a condition, the first or the last can be turned round in the code of Core, draws some,
/// and writes sources in which each is behind a switch.
/// </summary>
internal static class FaultDrawer
{
    private const string Core = "src/NameBand.Core";

    private static readonly Dictionary<SyntaxKind, string> Operators = new()
    {
        [SyntaxKind.LessThanExpression] = "<=",
        [SyntaxKind.LessThanOrEqualExpression] = "<",
        [SyntaxKind.GreaterThanExpression] = ">=",
        [SyntaxKind.GreaterThanOrEqualExpression] = ">",
        [SyntaxKind.EqualsExpression] = "!=",
        [SyntaxKind.NotEqualsExpression] = "==",
        [SyntaxKind.AddExpression] = "-",
        [SyntaxKind.SubtractExpression] = "+",
        [SyntaxKind.MultiplyExpression] = "/",
        [SyntaxKind.DivideExpression] = "*",
        [SyntaxKind.LogicalAndExpression] = "||",
        [SyntaxKind.LogicalOrExpression] = "&&",
    };

    private static readonly Dictionary<string, string> Methods = new(StringComparer.Ordinal)
    {
        ["Any"] = "All",
        ["All"] = "Any",
        ["First"] = "Last",
        ["Last"] = "First",
        ["FirstOrDefault"] = "LastOrDefault",
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["OrderBy"] = "OrderByDescending",
        ["Skip"] = "Take",
        ["Take"] = "Skip",
        ["TakeWhile"] = "SkipWhile",
        ["SkipWhile"] = "TakeWhile",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
    };

    /// <summary>All of them, room by room; always in the same order.</summary>
    public static ILookup<string, PlantedFault> All(string project) =>
        Directory.GetFiles(Path.Combine(project, Core), "*.cs", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(project, f).Replace('\\', '/')).Order(StringComparer.Ordinal)
            .Where(f => f.Split('/') is [_, _, not "obj" and not "bin", _, ..])
            .SelectMany(f => In(f, File.ReadAllText(Path.Combine(project, f)))).ToLookup(f => f.Room, StringComparer.Ordinal);

    /// <summary>So many of each room, none within another one.</summary>
    public static List<PlantedFault> Drawn(ILookup<string, PlantedFault> all, int count, int seed)
    {
        var random = new Random(seed);
        var drawn = new List<PlantedFault>();
        foreach (var room in all)
        {
            var own = new List<PlantedFault>();
            foreach (var fault in room.OrderBy(_ => random.Next()).ToList())
            {
                if (own.Count < count && !own.Exists(o => o.File == fault.File && o.Span.OverlapsWith(fault.Span)))
                {
                    own.Add(fault);
                }
            }

            drawn.AddRange(own);
        }

        return drawn;
    }

    /// <summary>Writes each drawn fault behind its switch, and the switch. Their numbers are their places in the list, from 1.</summary>
    public static void Plant(string project, IReadOnlyList<PlantedFault> faults)
    {
        foreach (var file in faults.Select((f, i) => (Fault: f, Number: i + 1)).GroupBy(f => f.Fault.File))
        {
            string path = Path.Combine(project, file.Key);
            string text = File.ReadAllText(path);
            foreach (var (fault, number) in file.OrderByDescending(f => f.Fault.Span.Start))
            {
                string either = string.Create(
                    CultureInfo.InvariantCulture, $"(global::NameBand.PlantedFault.Is({number}) ? ({fault.Turned}) : ({fault.Was}))");
                text = text[..fault.Span.Start] + either + text[fault.Span.End..];
            }

            File.WriteAllText(path, text);
        }

        File.WriteAllText(Path.Combine(project, Core, "PlantedFault.cs"), Switch);
    }

    private static IEnumerable<PlantedFault> In(string file, string text)
    {
        var tree = CSharpSyntaxTree.ParseText(text);
        foreach (var node in tree.GetRoot().DescendantNodes().Where(n => !IsFixed(n)))
        {
            if (Turned(node) is var (at, turned))
            {
                int line = tree.GetLineSpan(at.Span).StartLinePosition.Line + 1;
                yield return new PlantedFault(file, line, at.Span, at.ToString(), turned);
            }
        }
    }

    /// <summary>What has to be known while compiling, or names something that is used further on, or is text.</summary>
    private static bool IsFixed(SyntaxNode node) =>
        node.Ancestors().Any(a => a is AttributeSyntax or EnumMemberDeclarationSyntax or PatternSyntax or CaseSwitchLabelSyntax
            or InterpolatedStringExpressionSyntax
            or ParameterSyntax { Parent: ParameterListSyntax { Parent: not LambdaExpressionSyntax } }
            || (a is FieldDeclarationSyntax f && f.Modifiers.Any(SyntaxKind.ConstKeyword))
            || a is LocalDeclarationStatementSyntax { IsConst: true })
        || node.DescendantNodesAndSelf().Any(n => n is SingleVariableDesignationSyntax);

    private static (SyntaxNode At, string Turned)? Turned(SyntaxNode node) => node switch
    {
        BinaryExpressionSyntax b when Operators.TryGetValue(b.Kind(), out string? other) && !(b.IsKind(SyntaxKind.AddExpression)
            && b.ToString().Contains('"', StringComparison.Ordinal)) => (b, $"{b.Left} {other} {b.Right}"),
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax m } i
            when Methods.TryGetValue(m.Name.ToString(), out string? other) && (other != "All" || i.ArgumentList.Arguments.Count == 1) =>
            (i, $"{m.Expression}.{other}{i.ArgumentList}"),
        PrefixUnaryExpressionSyntax p when p.IsKind(SyntaxKind.LogicalNotExpression) => (p, p.Operand.ToString()),
        LiteralExpressionSyntax { Parent: not ArgumentSyntax { NameColon: not null } } l => l.Kind() switch
        {
            SyntaxKind.TrueLiteralExpression => (l, "false"),
            SyntaxKind.FalseLiteralExpression => (l, "true"),
            _ => null,
        },
        IfStatementSyntax s => (s.Condition, $"!({s.Condition})"),
        _ => null,
    };

    /// <summary>Which one is switched on is told by the environment; which ones were passed is told when it is asked, those of processes
    /// that were started besides too.</summary>
    private const string Switch = """
        namespace NameBand;

        public static class PlantedFault
        {
            private const int Most = 100_000;

            private static readonly int On = int.TryParse(System.Environment.GetEnvironmentVariable("NAMEBAND_FAULT"), out int n) ? n : 0;
            private static readonly string? Folder = System.Environment.GetEnvironmentVariable("NAMEBAND_FAULTS_PASSED");
            private static readonly bool[]? Seen = Begin();

            public static bool Is(int number)
            {
                if (Seen is not null)
                {
                    Seen[number] = true;
                }

                return number == On;
            }

            public static string Passed()
            {
                if (Seen is null)
                {
                    return "";
                }

                string all = Own();
                System.Array.Clear(Seen);
                foreach (string file in System.IO.Directory.GetFiles(Folder!))
                {
                    all += " " + System.IO.File.ReadAllText(file);
                    System.IO.File.Delete(file);
                }

                return all;
            }

            private static bool[]? Begin()
            {
                if (Folder is null)
                {
                    return null;
                }

                System.AppDomain.CurrentDomain.ProcessExit += (_, _) =>
                    System.IO.File.WriteAllText(System.IO.Path.Combine(Folder, System.Environment.ProcessId.ToString()), Own());
                return new bool[Most];
            }

            private static string Own() =>
                string.Join(' ', System.Linq.Enumerable.Where(System.Linq.Enumerable.Range(0, Most), i => Seen![i]));
        }
        """;
}
