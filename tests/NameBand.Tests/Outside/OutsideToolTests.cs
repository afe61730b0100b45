using Xunit;
using Xunit.Sdk;

namespace NameBand.Tests.Outside;

public class OutsideToolTests
{
    [SkippableFact]
    public void Runs_a_program_with_input_and_reads_its_output()
    {
        OutsideTool.Require("sort", "coreutils");

        Assert.Equal("a\nö\n", OutsideTool.Run("sort", ["-"], "ö\na\n"));
    }

    [SkippableFact]
    public void A_failing_program_is_an_error_with_its_own_words()
    {
        OutsideTool.Require("sort", "coreutils");

        var error = Assert.Throws<InvalidOperationException>(() => OutsideTool.Run("sort", ["no-such-file-here"]));
        Assert.Contains("no-such-file-here", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_program_skips_the_test_or_fails_it_under_CI()
    {
        var refusal = Assert.ThrowsAny<Exception>(() => OutsideTool.Require("no-such-program-here", "no-package"));

        bool ci = Environment.GetEnvironmentVariable("CI") is { Length: > 0 } value && value != "false";
        Assert.Equal(ci, refusal is XunitException);
        Assert.Contains("no-such-program-here", refusal.Message, StringComparison.Ordinal);
    }
}
