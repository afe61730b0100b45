using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Web;

public class FieldDraftTests
{
    private readonly FieldDraft _draft = new();

    public FieldDraftTests() => _draft.TakeUp("8 mm");

    [Fact]
    public void A_field_that_nobody_uses_shows_what_holds()
    {
        _draft.TakeUp("7 mm");
        Assert.Equal("7 mm", _draft.Text);
        Assert.Null(_draft.Elsewhere);
    }

    [Fact]
    public void A_field_that_was_entered_shows_it_when_it_is_left()
    {
        _draft.Enter();
        _draft.TakeUp("7 mm");
        Assert.Equal(("8 mm", "7 mm"), (_draft.Text, _draft.Elsewhere));
        _draft.Leave();
        Assert.Equal(("7 mm", null), (_draft.Text, _draft.Elsewhere));
    }

    [Fact]
    public void What_is_typed_stays_until_it_is_set()
    {
        _draft.Enter();
        _draft.Type("9");
        _draft.TakeUp("7 mm");
        _draft.Leave();
        _draft.TakeUp("6 mm");
        Assert.Equal(("9", "6 mm"), (_draft.Text, _draft.Elsewhere));
        _draft.Enter();
        _draft.Leave();
        Assert.Equal("9", _draft.Text);

        _draft.Set();
        Assert.Null(_draft.Elsewhere);
        _draft.TakeUp("9 mm");
        Assert.Equal("9 mm", _draft.Text);
    }

    [Fact]
    public void What_is_typed_and_taken_back_is_not_in_the_way()
    {
        _draft.Enter();
        _draft.Type("8 m");
        _draft.Type("8 mm");
        _draft.TakeUp("7 mm");
        _draft.Leave();
        Assert.Equal(("7 mm", null), (_draft.Text, _draft.Elsewhere));
    }

    [Fact]
    public void The_same_set_elsewhere_is_nothing_to_tell()
    {
        _draft.Enter();
        _draft.Type("7 mm");
        _draft.TakeUp("7 mm");
        Assert.Null(_draft.Elsewhere);
    }
}
