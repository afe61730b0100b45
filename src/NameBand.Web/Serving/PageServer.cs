using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Transport.Sockets;
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
    /// <param name="started">
    /// Told where the page is, as soon as a browser can knock there: while its window opens, the server comes to be behind the door.
    /// </param>
    /// <returns>When it was told to stop.</returns>
    /// <exception cref="PortException">A port is taken.</exception>
    public static async Task RunAsync(PageOptions options, Action<PageAddress> started, CancellationToken stop)
    {
        using var table = new Worktable(options.JobFolder);
        using var door = Listen(options.Port);
        var opened = Task.Run(table.Open, stop);
        string url = $"http://{door.LocalEndPoint}/";
        if (!options.Lend)
        {
            started(new PageAddress(url, null, null));
        }

        await using var app = Build(door, table);
        await app.StartAsync(stop).ConfigureAwait(false);
        await opened.ConfigureAwait(false);
        var desk = app.Services.GetRequiredService<LendDesk>();
        await using var lent = options.Lend
            ? await LendServer.StartAsync(
                options, table, desk, app.Services.GetRequiredService<IWebHostEnvironment>().WebRootFileProvider, stop).ConfigureAwait(false)
            : null;
        if (options.Lend)
        {
            started(new PageAddress(url, desk.Url, desk.Code));
        }

        await app.WaitForShutdownAsync(stop).ConfigureAwait(false);
    }

    private static Socket Listen(int port)
    {
        var door = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            door.Bind(new IPEndPoint(IPAddress.Loopback, port));
            door.Listen();
            return door;
        }
        catch (SocketException e)
        {
            door.Dispose();
            throw new PortException(port, e);
        }
    }

    private static WebApplication Build(Socket door, Worktable table)
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
            kestrel.Listen((IPEndPoint)door.LocalEndPoint!);
        });
        builder.Services.Configure<SocketTransportOptions>(sockets => sockets.CreateBoundListenSocket = _ => door);

        var services = builder.Services;
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddSingleton(table);
        services.AddSingleton<PrintRun>();
        services.AddSingleton<Strip.ShapeShelf>();
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<LendDesk>();
        services.AddSingleton<MemoryRest>();
        services.AddHostedService(found => found.GetRequiredService<MemoryRest>());
        services.AddRazorComponents().AddInteractiveServerComponents(circuit => circuit.DisconnectedCircuitMaxRetained = 10);
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(1));

        var app = builder.Build();
        var rest = app.Services.GetRequiredService<MemoryRest>();
        app.Use((context, next) =>
        {
            // A view at the machine that stands open asks how things are all night long.
            if (context.Request.Path != "/machine/state")
            {
                rest.Heard();
            }

            return next(context);
        });
        app.UseMiddleware<Guard>();
        app.UseAntiforgery();
        app.MapStaticAssets();
        StripEndpoints.Map(app, app.Services.GetRequiredService<Strip.ShapeShelf>());
        OutFiles.Map(app);
        FaceEndpoints.Map(app);
        MachineEndpoints.Map(app, table);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);

        return app;
    }
}
