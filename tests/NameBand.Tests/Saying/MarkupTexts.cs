using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using NameBand.Tests.House;

namespace NameBand.Tests.Saying;

/// <summary>
/// Texts in markup: the compiler makes code of it, which the build keeps, and in which each text and each attribute is a call of its own.
/// </summary>
internal static partial class MarkupTexts
{
    private const string Web = "src/NameBand.Web/";
    private const string Made = Web + "obj/generated/Microsoft.CodeAnalysis.Razor.Compiler/"
        + "Microsoft.NET.Sdk.Razor.SourceGenerators.RazorSourceGenerator/";

    /// <summary>Attributes that a person reads or hears.</summary>
    private static readonly HashSet<string> ReadAttributes =
        new(["aria-label", "aria-description", "aria-roledescription", "aria-valuetext", "title", "placeholder", "alt", "label"]);

    /// <summary>What components of the page show as it is.</summary>
    private static readonly HashSet<string> ReadParameters = new(["Placeholder", "Heading", "Title", "Label"]);

    private static readonly HashSet<string> Adding = new(["AddContent", "AddMarkupContent", "AddAttribute", "AddComponentParameter"]);

    /// <summary>What the markup as it stands now has become.</summary>
    /// <exception cref="InvalidOperationException">It was not built since it was changed.</exception>
    public static IEnumerable<SourceFile> Files => Repository.Files("src/NameBand.Web", ".razor").Select(markup =>
    {
        string path = Path.Combine(Repository.Root, Made, markup.Path[Web.Length..].Replace(".razor", "_razor.g.cs", StringComparison.Ordinal));
        string code = File.Exists(path) ? File.ReadAllText(path) : "";
        string print = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(Repository.Root, markup.Path))));
        return code.Split('\n')[0].Contains(print, StringComparison.Ordinal) ? new SourceFile(markup.Path, code)
            : throw new InvalidOperationException($"{markup.Path} was changed since it was built: build src/NameBand.Web first.");
    });

    /// <summary>English that the markup has of itself and that nothing says in another language.</summary>
    public static IEnumerable<SyntaxNode> Unsaid(SyntaxNode root)
    {
        foreach (var call in root.DescendantNodes().OfType<InvocationExpressionSyntax>())
        {
            if (NameOf(call) is not { } name || call.ArgumentList.Arguments is not [_, var second, ..] given)
            {
                continue;
            }

            if (name == "AddMarkupContent" && second.Expression is LiteralExpressionSyntax markup && HasWords(markup.Token.ValueText))
            {
                yield return markup;
            }
            else if (name is "AddContent" || (given.Count > 2 && IsRead(name, second.Expression)))
            {
                foreach (var word in given.Skip(name == "AddContent" ? 1 : 2).SelectMany(a => Own(a.Expression)))
                {
                    yield return word;
                }
            }
        }
    }

    /// <summary>Whether a text is that of an attribute which no person reads, such as a class.</summary>
    public static bool IsForBrowser(SyntaxNode text)
    {
        var around = text.Ancestors().TakeWhile(a => a is not (LambdaExpressionSyntax or StatementSyntax));
        foreach (var above in around.OfType<InvocationExpressionSyntax>())
        {
            if (NameOf(above) is { } name)
            {
                return name == "AddMarkupContent"
                    || (name != "AddContent" && !IsRead(name, above.ArgumentList.Arguments[1].Expression));
            }
        }

        return false;
    }

    private static string? NameOf(InvocationExpressionSyntax call) =>
        call.Expression is MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax of, Name.Identifier.Text: var name }
        && of.Identifier.Text is var builder && builder.StartsWith("__builder", StringComparison.Ordinal) && Adding.Contains(name) ? name : null;

    private static bool IsRead(string adding, ExpressionSyntax named) => adding == "AddAttribute"
        ? named is LiteralExpressionSyntax attribute && ReadAttributes.Contains(attribute.Token.ValueText)
        : adding == "AddComponentParameter" && ReadParameters.Contains(LastWord().Match(named.ToString()).Value);

    /// <summary>Texts that are shown as they stand, and are not first given to something else.</summary>
    private static IEnumerable<SyntaxNode> Own(ExpressionSyntax shown) => shown.DescendantNodesAndSelf(
        n => n is not LambdaExpressionSyntax && (n is not InvocationExpressionSyntax call || IsTypeCheck(call))
            && n is not (ElementAccessExpressionSyntax or IsPatternExpressionSyntax)
            && !(n is BinaryExpressionSyntax two && two.OperatorToken.Text is "==" or "!=")
            && n is not CastExpressionSyntax { Type: IdentifierNameSyntax { Identifier.Text: "Said" } })
        .Where(n => n switch
        {
            LiteralExpressionSyntax { RawKind: (int)SyntaxKind.StringLiteralExpression } text => text.Token.ValueText.Any(char.IsLetter),
            InterpolatedStringTextSyntax text => text.TextToken.ValueText.Any(char.IsLetter),
            _ => false,
        });

    private static bool IsTypeCheck(InvocationExpressionSyntax call) =>
        call.Expression.ToString().Contains("RuntimeHelpers.TypeCheck", StringComparison.Ordinal);

    private static bool HasWords(string markup) =>
        Tag().Replace(markup, m => ReadAttribute().Match(m.Value).Groups[1].Value).Any(char.IsLetter);

    [GeneratedRegex(@"[A-Za-z]+(?=\)*$)")]
    private static partial Regex LastWord();

    [GeneratedRegex(@"<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\s(?:aria-label|aria-description|title|placeholder|alt|label)=""([^""]*)""")]
    private static partial Regex ReadAttribute();
}
