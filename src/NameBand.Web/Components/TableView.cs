using Microsoft.AspNetCore.Components;
using NameBand.Web.Table;

namespace NameBand.Web.Components;

/// <summary>A part of the page that is drawn anew whenever the worktable changes.</summary>
public abstract class TableView : ComponentBase, IDisposable
{
    [Inject]
    protected Worktable Table { get; set; } = null!;

    /// <summary>How things stood when this part was last drawn.</summary>
    protected TableSnapshot Now { get; private set; } = null!;

    public void Dispose()
    {
        Table.Changed -= OnChanged;
        Leave();
        GC.SuppressFinalize(this);
    }

    protected override void OnInitialized()
    {
        Now = Table.Now;
        Table.Changed += OnChanged;
    }

    /// <summary>What is sent to the browser beforehand is the laid out job, unless that takes long.</summary>
    protected override async Task OnInitializedAsync()
    {
        if (!RendererInfo.IsInteractive)
        {
            await Table.FirstLaidAsync();
            Now = Table.Now;
        }
    }

    /// <summary>Lets go of what else this part listens to.</summary>
    protected virtual void Leave()
    {
    }

    private void OnChanged() => _ = InvokeAsync(() =>
    {
        Now = Table.Now;
        StateHasChanged();
    });
}
