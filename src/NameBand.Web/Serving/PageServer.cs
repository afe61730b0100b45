using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NameBand.Web.Components;
using NameBand.Web.Machine;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>Serves the worktable of one job folder on this computer alone.</summary>
public static class PageServer
{
    /// <param name="started">Told where the page is, once it answers.</param>
    /// <returns>When it was told to stop.</returns>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task RunAsync(PageOptions options, Action<PageAddress> started, CancellationToken stop)
    {
        await using var app = Build(options);
        await app.StartAsync(stop).ConfigureAwait(false);
        string url = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        var desk = app.Services.GetRequiredService<LendDesk>();
        await using var lent = options.Lend
            ? await LendServer.StartAsync(
                options, app.Services.GetRequiredService<Worktable>(), desk, app.Services.GetRequiredService<IWebHostEnvironment>().WebRootFileProvider, stop).ConfigureAwait(false)
            : null;
        started(new PageAddress(url + "/", desk.Url, desk.Code));
        await app.WaitForShutdownAsync(stop).ConfigureAwait(false);
    }

    private static WebApplication Build(PageOptions options)
    {
        // The program's own folder, and not where it was started from, holds what is served.
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ApplicationName = "nameband",
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        builder.Configuration.Sources.Clear();
        builder.Logging.ClearProviders();
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 1_000_000;
            kestrel.Listen(IPAddress.Loopback, options.Port);
        });

        var services = builder.Services;
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddSingleton(_ => new Worktable(options.JobFolder));
        services.AddSingleton<PrintRun>();
        services.AddSingleton<Strip.ShapeShelf>();
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<LendDesk>();
        services.AddRazorComponents().AddInteractiveServerComponents(circuit => circuit.DisconnectedCircuitMaxRetained = 10);
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(1));

        var app = builder.Build();
        app.UseMiddleware<Guard>();
        app.UseAntiforgery();
        app.MapStaticAssets();
        StripEndpoints.Map(app, app.Services.GetRequiredService<Strip.ShapeShelf>());
        OutFiles.Map(app);
        FaceEndpoints.Map(app);
        MachineEndpoints.Map(app, app.Services.GetRequiredService<Worktable>());
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);

        // The first layout is under way before the browser asks for it.
        app.Services.GetRequiredService<Worktable>().Open();
        return app;
    }
}
