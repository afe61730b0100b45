using NameBand.Web.Machine;
using Xunit;

namespace NameBand.Tests.Web;

public class LendDeskTests
{
    private const string One = "10.0.0.7";

    private readonly SetClock _clock = new();

    [Fact]
    public void A_code_opens_one_screen_and_then_none()
    {
        using var desk = Desk();
        string code = desk.Code!;

        string token = desk.Exchange($" {code[..4]} {code[4..]} ", One)!;

        Assert.True(desk.Holds(token));
        Assert.Null(desk.Code);
        Assert.Null(desk.Exchange(code, One));
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
            Assert.Null(desk.Exchange(Other(code, i), $"sender {i}"));
        }

        Assert.Null(desk.Code);
        Assert.Null(desk.Exchange(code, One));
        desk.MakeCode();
        Assert.NotEqual(code, desk.Code);
    }

    [Fact]
    public void One_sender_is_not_heard_after_its_tries_and_uses_up_no_code_for_the_others()
    {
        using var desk = Desk();
        string code = desk.Code!;
        for (int i = 0; i < 2 * LendDesk.MostTries; i++)
        {
            Assert.Null(desk.Exchange(Other(code, i % 8), "stranger"));
        }

        Assert.True(desk.IsDeafTo("stranger"));
        Assert.Null(desk.Exchange(code, "stranger"));
        Assert.Equal(code, desk.Code);
        Assert.False(desk.IsDeafTo(One));
        Assert.True(desk.Holds(desk.Exchange(code, One)));

        // A new code was asked for at her own screen: whoever mistyped is heard again.
        desk.MakeCode();
        Assert.True(desk.Holds(desk.Exchange(desk.Code!, "stranger")));
    }

    [Fact]
    public void Of_very_many_screens_those_that_had_it_longest_are_forgotten()
    {
        using var desk = Desk();
        string first = desk.Exchange(desk.Code!, One)!, last = "";
        for (int i = 0; i < LendDesk.MostScreens; i++)
        {
            Assert.True(desk.Holds(first));
            desk.MakeCode();
            last = desk.Exchange(desk.Code!, One)!;
        }

        Assert.False(desk.Holds(first));
        Assert.True(desk.Holds(last));
        Assert.Equal(LendDesk.MostScreens, desk.ScreenCount);
    }

    [Fact]
    public void A_code_is_too_old_after_its_time_and_a_screen_that_has_it_stays()
    {
        using var desk = Desk();
        string token = desk.Exchange(desk.Code!, One)!;
        desk.MakeCode();
        string code = desk.Code!;
        _clock.Pass(LendDesk.Holding - TimeSpan.FromSeconds(1));
        Assert.Equal(code, desk.Code);

        _clock.Pass(TimeSpan.FromSeconds(1));

        Assert.Null(desk.Code);
        Assert.Null(desk.Exchange(code, One));
        Assert.True(desk.Holds(token));
    }

    [Fact]
    public void Taken_back_no_screen_and_no_code_holds()
    {
        using var desk = Desk();
        string token = desk.Exchange(desk.Code!, One)!;
        desk.MakeCode();
        string code = desk.Code!;

        desk.TakeBack();

        Assert.False(desk.Holds(token));
        Assert.Null(desk.Exchange(code, One));
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
