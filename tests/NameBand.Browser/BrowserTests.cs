using Xunit;

namespace NameBand.Browser;

/// <summary>A test in the browser; its tabs are closed after it, so that they do not work on beside the tests after it.</summary>
public abstract class BrowserTests(Chromium chromium) : IAsyncLifetime
{
    private protected Chromium Chromium { get; } = chromium;

    public Task InitializeAsync() => Task.CompletedTask;

    public Task DisposeAsync() => Chromium.CloseTabsAsync();
}
