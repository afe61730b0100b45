using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using NameBand.Common;
using NameBand.Tests.House;

namespace NameBand.Tests.Saying;

/// <summary>A text of the sources that a person reads.</summary>
/// <param name="Key">As the resource file has it; a form of a plural with its category after it.</param>
internal sealed record SourceText(string Key, string English, string At);

/// <summary>
/// The sources as the compiler understands them: every text that becomes a <c>Said</c>, every one that does so without being known
/// beforehand, and the English that becomes none.
/// </summary>
internal sealed partial class SourceTexts
{
    private const string FewestOfCode = "using System; using System.Collections.Generic; using System.IO; using System.Linq; "
        + "using System.Net.Http; using System.Threading; using System.Threading.Tasks; ";

    private static readonly string[] WebUsings =
    [
        "System.Net.Http.Json", "Microsoft.AspNetCore.Builder", "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Http",
        "Microsoft.AspNetCore.Routing", "Microsoft.Extensions.Configuration", "Microsoft.Extensions.DependencyInjection",
        "Microsoft.Extensions.Hosting", "Microsoft.Extensions.Logging",
    ];

    private const string Tried = "src/NameBand.Core/Tried.cs";

    private static readonly Lazy<SourceTexts> Whole = new(() => new SourceTexts(
        ["Core", "Web", "Cli"],
        [
            .. Repository.Files("src", ".cs").Where(f => !f.Path.Contains("/FastStart/", StringComparison.Ordinal)), .. MarkupTexts.Files,
        ],
        _ => true));

    private readonly List<SourceText> _texts = [];
    private readonly List<string> _unknown = [];
    private readonly List<string> _left = [];
    private readonly List<string> _unsaid = [];

    private SourceTexts(string[] projects, SourceFile[] files, Func<string, bool> isRead)
    {
        MetadataReference[] platform =
            [.. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
                .Where(p => !Path.GetFileName(p).StartsWith("NameBand.", StringComparison.Ordinal) && Path.GetFileName(p) != "nameband.dll")
                .Select(p => MetadataReference.CreateFromFile(p))];
        var before = new List<MetadataReference>(platform);
        foreach (string project in projects)
        {
            var compiled = Compiled(project, files.Where(f => f.Path.StartsWith($"src/NameBand.{project}/", StringComparison.Ordinal)), before);
            before.Add(compiled.ToMetadataReference());
            foreach (var tree in compiled.SyntaxTrees.Where(t => t.FilePath.Length > 0 && isRead(t.FilePath)))
            {
                Read(tree, compiled.GetSemanticModel(tree));
            }
        }
    }

    /// <summary>Of all projects.</summary>
    public static SourceTexts All => Whole.Value;

    public IReadOnlyCollection<SourceText> Texts => _texts;

    /// <summary>Where something becomes a <c>Said</c> that is neither a text between quotes nor said to be plain.</summary>
    public IReadOnlyCollection<string> Unknown => _unknown;

    /// <summary>English sentences that become none, each with its place.</summary>
    public IReadOnlyCollection<string> Left => _left;

    /// <summary>English in the page's markup that becomes none, each with its place.</summary>
    public IReadOnlyCollection<string> UnsaidInMarkup => _unsaid;

    /// <summary>For trying the reading itself.</summary>
    public static SourceTexts Of(string code) => new(
        ["Core"], [.. Repository.Files("src/NameBand.Core/Common", ".cs"), new SourceFile(Tried, code)], f => f == Tried);

    private static CSharpCompilation Compiled(string project, IEnumerable<SourceFile> files, IEnumerable<MetadataReference> before)
    {
        var form = new CSharpParseOptions(LanguageVersion.Preview);
        string usings = string.Concat((FewestOfCode + string.Concat(WebUsings.Take(project == "Cli" ? WebUsings.Length : 0).Select(u => $"using {u}; ")))
            .Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(u => $"global {u}; "));
        string friends = string.Concat(new[] { "NameBand.Web", "NameBand.Cli", "nameband" }
            .Select(f => $"[assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"{f}\")] "));
        return CSharpCompilation.Create(
            project == "Cli" ? "nameband" : $"NameBand.{project}",
            [CSharpSyntaxTree.ParseText(usings + friends, form), .. files.Select(f => CSharpSyntaxTree.ParseText(f.Text, form, f.Path))],
            before,
            // What may be null is of no matter here, and finding it out takes most of the time.
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, allowUnsafe: true));
    }

    private void Read(SyntaxTree tree, SemanticModel model)
    {
        var ones = new HashSet<ExpressionSyntax>();
        foreach (var call in tree.GetRoot().DescendantNodes().OfType<InvocationExpressionSyntax>())
        {
            ReadPlural(call, model, ones);
        }

        foreach (var text in tree.GetRoot().DescendantNodes().OfType<ExpressionSyntax>())
        {
            bool isPart = text.Parent is MemberAccessExpressionSyntax member && member.Name == text;
            if (!isPart && BecomesSaid(text, model) && !ones.Contains(text))
            {
                foreach (var leaf in Leaves(text))
                {
                    ReadLeaf(leaf, text, model);
                }
            }

            if (text is LiteralExpressionSyntax or InterpolatedStringExpressionSyntax && IsLeft(text, model, ones))
            {
                _left.Add($"{Place(text)}: {Short(text)}");
            }
        }

        _unsaid.AddRange(MarkupTexts.Unsaid(tree.GetRoot()).Select(text => $"{Place(text)}: {Short(text)}"));
        foreach (var attribute in tree.GetRoot().DescendantNodes().OfType<AttributeSyntax>().Where(a => a.Name.ToString() == "Told"))
        {
            if (model.GetConstantValue(attribute.ArgumentList!.Arguments[0].Expression) is { HasValue: true, Value: string english })
            {
                Add(english, attribute);
            }
        }
    }

    /// <summary>A number with what is counted, and texts that differ with a number.</summary>
    private void ReadPlural(InvocationExpressionSyntax call, SemanticModel model, HashSet<ExpressionSyntax> ones)
    {
        string name = call.Expression is MemberAccessExpressionSyntax { Expression: var of, Name.Identifier.Text: var method }
            ? $"{of}.{method}" : "";
        var given = call.ArgumentList.Arguments;
        if ((name is "Wording.Count" or "Words.Count" && given.Count >= 2) || (name is "Wording.Amount" && given.Count == 3))
        {
            foreach (var one in Leaves(given[1].Expression))
            {
                string? single = Constant(one, model);
                string? several = given.Count > 2 ? Constant(given[2].Expression, model) : single + "s";
                ones.UnionWith(given.Skip(1).Select(a => a.Expression));
                AddPlural("{0} " + single, "{0} " + several, single is null || several is null, call);
            }
        }
        else if (name is "Said.Plural" && given.Count == 3)
        {
            ones.Add(given[1].Expression);
            string? single = Template(given[1].Expression, model), several = Template(given[2].Expression, model);
            AddPlural(single!, several!, single is null || several is null, call);
        }
    }

    private void AddPlural(string one, string several, bool isUnknown, SyntaxNode at)
    {
        if (isUnknown)
        {
            _unknown.Add($"{Place(at)}: {Short(at)}");
            return;
        }

        _texts.Add(new SourceText($"{SaidTemplate.KeyOf(several)} [one]", one, Place(at)));
        _texts.Add(new SourceText(SaidTemplate.KeyOf(several), several, Place(at)));
    }

    private void ReadLeaf(ExpressionSyntax leaf, ExpressionSyntax whole, SemanticModel model)
    {
        if (Template(leaf, model) is { } template)
        {
            Add(template, leaf);
        }
        else if (!IsSaid(model.GetTypeInfo(leaf).Type) && leaf is not ThrowExpressionSyntax
            && leaf is not LiteralExpressionSyntax { RawKind: (int)SyntaxKind.NullLiteralExpression })
        {
            _unknown.Add($"{Place(leaf)}: {Short(leaf)}{(leaf == whole ? "" : " (an arm)")}");
        }
    }

    private void Add(string template, SyntaxNode at)
    {
        if (Hole().Replace(template, "").Any(char.IsLetter))
        {
            _texts.Add(new SourceText(SaidTemplate.KeyOf(template), template, Place(at)));
        }
    }

    /// <summary>What the compiler fills in piece by piece, or knows beforehand; else null.</summary>
    private static string? Template(ExpressionSyntax text, SemanticModel model)
    {
        var parts = Added(text).ToList();
        bool isFilledIn = parts.TrueForAll(p => p is InterpolatedStringExpressionSyntax)
            && (IsCast(text) || model.GetConversion(text).IsInterpolatedStringHandler);
        if (!isFilledIn)
        {
            return Constant(text, model)?.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);
        }

        int hole = 0;
        return string.Concat(parts.Cast<InterpolatedStringExpressionSyntax>().SelectMany(p => p.Contents).Select(c =>
            c is InterpolatedStringTextSyntax words ? words.TextToken.ValueText : FormattableString.Invariant($"{{{hole++}}}")));
    }

    private static bool IsCast(SyntaxNode text) =>
        text.Parent is CastExpressionSyntax || (text.Parent is ParenthesizedExpressionSyntax inner && IsCast(inner));

    private static string? Constant(ExpressionSyntax text, SemanticModel model) =>
        model.GetConstantValue(text) is { HasValue: true, Value: string known } ? known : null;

    private static bool BecomesSaid(ExpressionSyntax text, SemanticModel model)
    {
        var type = model.GetTypeInfo(text);
        if (text is CastExpressionSyntax cast && IsSaid(type.Type))
        {
            return model.GetTypeInfo(cast.Expression).Type?.SpecialType == SpecialType.System_String;
        }

        return IsSaid(type.ConvertedType)
            && type.Type?.SpecialType == SpecialType.System_String && text is not ParenthesizedExpressionSyntax;
    }

    private static bool IsSaid(ITypeSymbol? type) =>
        type is { Name: "Said", ContainingNamespace: { Name: "Common", ContainingNamespace.Name: "NameBand" } };

    private bool IsLeft(ExpressionSyntax text, SemanticModel model, HashSet<ExpressionSyntax> ones)
    {
        string words = text is LiteralExpressionSyntax literal
            ? literal.Token.Value as string ?? ""
            : string.Concat(((InterpolatedStringExpressionSyntax)text).Contents.Select(
                c => c is InterpolatedStringTextSyntax t ? t.TextToken.ValueText : " "));
        return Sentence().IsMatch(words) && !Markup().IsMatch(words)
            && !MarkupTexts.IsForBrowser(text)
            && !text.Ancestors().Any(a => a is ThrowStatementSyntax or ThrowExpressionSyntax or AttributeSyntax)
            && !Above(text).Any(a => BecomesSaid(a, model) || ones.Contains(a));
    }

    private static IEnumerable<ExpressionSyntax> Above(ExpressionSyntax text)
    {
        yield return text;
        for (var above = text.Parent; above is ParenthesizedExpressionSyntax or ConditionalExpressionSyntax or SwitchExpressionArmSyntax
            or SwitchExpressionSyntax or BinaryExpressionSyntax or CastExpressionSyntax; above = above.Parent)
        {
            if (above is ExpressionSyntax expression)
            {
                yield return expression;
            }
        }
    }

    private static IEnumerable<ExpressionSyntax> Leaves(ExpressionSyntax text) => text switch
    {
        ParenthesizedExpressionSyntax inner => Leaves(inner.Expression),
        ConditionalExpressionSyntax either => Leaves(either.WhenTrue).Concat(Leaves(either.WhenFalse)),
        SwitchExpressionSyntax many => many.Arms.SelectMany(a => Leaves(a.Expression)),
        BinaryExpressionSyntax { RawKind: (int)SyntaxKind.CoalesceExpression } or => Leaves(or.Left).Concat(Leaves(or.Right)),
        CastExpressionSyntax { Type: IdentifierNameSyntax { Identifier.Text: "Said" } } cast => Leaves(cast.Expression),
        _ => [text],
    };

    private static IEnumerable<ExpressionSyntax> Added(ExpressionSyntax text) => text switch
    {
        ParenthesizedExpressionSyntax inner => Added(inner.Expression),
        BinaryExpressionSyntax { RawKind: (int)SyntaxKind.AddExpression } sum => Added(sum.Left).Concat(Added(sum.Right)),
        _ => [text],
    };

    private static string Place(SyntaxNode node) =>
        FormattableString.Invariant($"{node.SyntaxTree.FilePath}, line {node.GetLocation().GetMappedLineSpan().StartLinePosition.Line + 1}");

    private static string Short(SyntaxNode node)
    {
        string line = Blanks().Replace(node.ToString(), " ");
        return line.Length <= 110 ? line : line[..110] + "…";
    }

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Hole();

    /// <summary>Two words beside each other: a key, a path or a form of a number has none.</summary>
    [GeneratedRegex(@"[A-Za-z’]{2,}[,;:.]? +[“(]?[A-Za-z]{2,}")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"^\s*<|</|/>|\bxmlns\b|^\s*[.#@\w-]+\s*\{|stroke=|style=|; charset=|default-src")]
    private static partial Regex Markup();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
