using NameBand.Web.Machine;
using Xunit;

namespace NameBand.Tests.Web;

public class LendDeskTests
{
    private readonly SetClock _clock = new();

    [Fact]
    public void A_code_opens_one_screen_and_then_none()
    {
        using var desk = Desk();
        string code = desk.Code!;

        string token = desk.Exchange($" {code[..4]} {code[4..]} ")!;

        Assert.True(desk.Holds(token));
        Assert.Null(desk.Code);
        Assert.Null(desk.Exchange(code));
        Assert.False(desk.Holds(code));
    }

    [Fact]
    public void Nobody_guesses_a_code_within_the_tries_it_bears()
    {
        using var desk = Desk();
        string code = desk.Code!;
        Assert.Matches("^[0-9]{8}$", code);
        for (int i = 0; i < LendDesk.MostTries; i++)
        {
            Assert.NotNull(desk.Code);
            Assert.Null(desk.Exchange(Other(code, i)));
        }

        Assert.Null(desk.Code);
        Assert.Null(desk.Exchange(code));
        desk.MakeCode();
        Assert.NotEqual(code, desk.Code);
    }

    [Fact]
    public void A_code_is_too_old_after_its_time_and_a_screen_that_has_it_stays()
    {
        using var desk = Desk();
        string token = desk.Exchange(desk.Code!)!;
        desk.MakeCode();
        string code = desk.Code!;
        _clock.Pass(LendDesk.Holding - TimeSpan.FromSeconds(1));
        Assert.Equal(code, desk.Code);

        _clock.Pass(TimeSpan.FromSeconds(1));

        Assert.Null(desk.Code);
        Assert.Null(desk.Exchange(code));
        Assert.True(desk.Holds(token));
    }

    [Fact]
    public void Taken_back_no_screen_and_no_code_holds()
    {
        using var desk = Desk();
        string token = desk.Exchange(desk.Code!)!;
        desk.MakeCode();
        string code = desk.Code!;

        desk.TakeBack();

        Assert.False(desk.Holds(token));
        Assert.Null(desk.Exchange(code));
        Assert.Equal(0, desk.ScreenCount);
    }

    private LendDesk Desk()
    {
        var desk = new LendDesk(_clock);
        desk.MakeCode();
        return desk;
    }

    /// <summary>A code that differs in one digit.</summary>
    private static string Other(string code, int at) => code[..at] + (char)('0' + ((code[at] - '0' + 1) % 10)) + code[(at + 1)..];

    private sealed class SetClock : TimeProvider
    {
        private DateTimeOffset _now = new(2031, 5, 4, 20, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => _now;

        public void Pass(TimeSpan time) => _now += time;
    }
}
