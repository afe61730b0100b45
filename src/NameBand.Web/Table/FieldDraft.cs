namespace NameBand.Web.Table;

/// <summary>
/// What stands in a field while somebody fills it in. A field in use, or one with something typed that is not set yet, keeps
/// what stands in it whatever is set elsewhere; then <see cref="Elsewhere"/> says what that was.
/// </summary>
public sealed class FieldDraft
{
    private string _saved = "";
    private string? _entered;
    private bool _isInUse;

    public string Text { get; private set; } = "";

    /// <summary>Something was typed that is not set yet.</summary>
    public bool IsEdited { get; private set; }

    /// <summary>What was set elsewhere while this field was being filled in; null: nothing.</summary>
    public string? Elsewhere { get; private set; }

    /// <summary>The key's value as it stands in the job now.</summary>
    public void TakeUp(string saved)
    {
        bool isNews = saved != _saved;
        _saved = saved;
        if (!_isInUse && !IsEdited)
        {
            (Text, Elsewhere) = (saved, null);
        }
        else if (isNews)
        {
            Elsewhere = saved == Text ? null : saved;
        }
    }

    /// <summary>Something is being typed.</summary>
    public void Type(string? text) => (Text, IsEdited) = (text ?? "", true);

    /// <summary>The field is entered.</summary>
    public void Enter() => (_isInUse, _entered) = (true, IsEdited ? null : Text);

    /// <summary>The field is left: where nothing was typed, it shows what holds.</summary>
    public void Leave()
    {
        _isInUse = false;
        if (Text == _entered)
        {
            IsEdited = false;
            TakeUp(_saved);
        }
    }

    /// <summary>What stands in the field was set, and the job has it.</summary>
    public void Set() => (IsEdited, _entered, Elsewhere) = (false, Text, null);
}
