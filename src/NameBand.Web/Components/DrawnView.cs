using Microsoft.JSInterop;

namespace NameBand.Web.Components;

/// <summary>A picture or view that a script in the browser draws into an element of the page.</summary>
internal sealed class DrawnView(IJSRuntime browser) : IAsyncDisposable
{
    private IJSObjectReference? _module;
    private IJSObjectReference? _view;
    private bool _isGone;

    /// <summary>Fetches the script and has it begin.</summary>
    /// <param name="script">Its file below wwwroot.</param>
    /// <param name="arguments">What its <c>begin</c> takes; the element first.</param>
    public async Task BeginAsync(string script, params object?[] arguments)
    {
        _module = await browser.InvokeAsync<IJSObjectReference>("import", "./_content/NameBand.Web/" + script);
        if (!_isGone)
        {
            _view = await _module.InvokeAsync<IJSObjectReference>("begin", arguments);
        }

        if (_isGone)
        {
            // She went on to another view before this one had begun.
            await DisposeAsync();
        }
    }

    public bool HasBegun => _view is not null && !_isGone;

    /// <summary>Tells the view, once it has begun, how things stand.</summary>
    public ValueTask UpdateAsync(object state) => _view!.InvokeVoidAsync("update", state);

    /// <summary>Has the view do something else that it can.</summary>
    public ValueTask TellAsync(string what, params object?[] arguments) => _view!.InvokeVoidAsync(what, arguments);

    public async ValueTask DisposeAsync()
    {
        _isGone = true;
        try
        {
            if (_view is not null)
            {
                await _view.InvokeVoidAsync("dispose");
                await _view.DisposeAsync();
            }

            if (_module is not null)
            {
                await _module.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The tab was closed: its picture went with it.
        }
    }
}
