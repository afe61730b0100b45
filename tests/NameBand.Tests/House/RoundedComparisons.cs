using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace NameBand.Tests.House;

/// <summary>
/// A test over drawn values compares by a distance, not by decimals: of two numbers that differ by nothing, one may be rounded
/// up and the other down, and the test fails on one draw in many.
/// </summary>
internal static class RoundedComparisons
{
    public static IEnumerable<string> Violations(SourceFile file) =>
        CSharpSyntaxTree.ParseText(file.Text).GetRoot().DescendantNodes().OfType<InvocationExpressionSyntax>()
            .Where(call => call.Expression is MemberAccessExpressionSyntax { Name.Identifier.Text: "Sample" })
            .SelectMany(draw => draw.DescendantNodes().OfType<InvocationExpressionSyntax>())
            .Where(IsByDecimals)
            .Select(call => $"{file.Path}:{call.GetLocation().GetLineSpan().StartLinePosition.Line + 1}: {call}");

    private static bool IsByDecimals(InvocationExpressionSyntax call) =>
        call.Expression.ToString() is "Assert.Equal" or "Assert.NotEqual"
        && call.ArgumentList.Arguments is [_, _, { Expression: LiteralExpressionSyntax { Token.Value: int } }];
}
