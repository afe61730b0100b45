using System.Collections.Immutable;
using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Transport.Sockets;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NameBand.Common;
using NameBand.Web.Components;
using NameBand.Web.Machine;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>Serves the worktable of one job folder on this computer alone, to whoever has its address.</summary>
public static class PageServer
{
    /// <param name="started">
    /// Told where the page is, as soon as a browser can knock there: while its window opens, the server comes to be behind the door.
    /// </param>
    /// <returns>When it was told to stop.</returns>
    /// <exception cref="PortException">A port is taken.</exception>
    public static async Task RunAsync(PageOptions options, Action<PageAddress> started, CancellationToken stop)
    {
        var store = PageKeyStore.OfThisAccount();
        var kept = store.Of(options.JobFolder);
        using var table = new Worktable(options.JobFolder);
        using var door = Listen(options.Port, kept.Port);
        var opened = Task.Run(table.Open, stop);
        var at = AddressOf(options, store, kept, (IPEndPoint)door.LocalEndPoint!);
        if (!options.Lend)
        {
            started(at);
        }

        await using var app = Build(door, table, kept.Key, options);
        await app.StartAsync(stop).ConfigureAwait(false);
        await opened.ConfigureAwait(false);
        var desk = app.Services.GetRequiredService<LendDesk>();
        await using var lent = options.Lend
            ? await LendServer.StartAsync(
                options, table, desk, app.Services.GetRequiredService<IWebHostEnvironment>().WebRootFileProvider, stop)
                .ConfigureAwait(false)
            : null;
        if (options.Lend)
        {
            started(at with { LendUrl = desk.Url, LendCode = desk.Code });
        }

        await app.WaitForShutdownAsync(stop).ConfigureAwait(false);
    }

    private static PageAddress AddressOf(PageOptions options, PageKeyStore store, KeptKey kept, IPEndPoint here)
    {
        string url = kept.Key.AddressAt($"http://{here}/");
        var notes = ImmutableArray.CreateBuilder<Problem>();
        if (kept.Doubt is { } doubt)
        {
            notes.Add(doubt);
        }

        if (kept.Port != 0 && kept.Port != here.Port && options.Port == 0)
        {
            notes.Add(Problem.Note(
                new Where(), $"Port {kept.Port}, where this worktable was last, is taken by another program.",
                "Tabs that are still open do not come back: open the address above in them."));
        }

        return new PageAddress(
            url, null, null)
        { Opener = store.Keep(options.JobFolder, kept, here.Port, url), Notes = notes.ToImmutable() };
    }

    /// <param name="wish">Where tabs that are open look for it, if no port is asked for; any other will do; 0: none is wished for.</param>
    private static Socket Listen(int port, int wish)
    {
        if (port != 0 || wish == 0)
        {
            return Listen(port);
        }

        try
        {
            return Listen(wish);
        }
        catch (PortException)
        {
            return Listen(0);
        }
    }

    /// <exception cref="PortException">The port cannot be had.</exception>
    internal static Socket Listen(int port)
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

    internal static WebApplication Build(Socket door, Worktable table, PageKey key, PageOptions options)
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
        services.AddSingleton(options);
        services.AddSingleton<Beginning>();
        services.AddSingleton<PrintRun>();
        services.AddSingleton<PlansDesk>();
        services.AddSingleton<LooksDesk>();
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
        app.UseMiddleware<OddRequests>();
        PageLanguage.Use(app);
        app.UseMiddleware<Guard>();
        app.UseMiddleware<Door>(key);
        app.UseStatusCodePagesWithReExecute("/not-there", createScopeForStatusCodePages: true);
        app.Use(OnlyToPeople);
        app.UseAntiforgery();
        app.MapStaticAssets();
        StripEndpoints.Map(app, app.Services.GetRequiredService<Strip.ShapeShelf>());
        OutFiles.Map(app);
        FaceEndpoints.Map(app);
        MachineEndpoints.Map(app, table);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);

        return app;
    }

    /// <summary>What is not there is told with a page to whoever asked for a page, and with nothing to a program.</summary>
    private static Task OnlyToPeople(HttpContext context, RequestDelegate next)
    {
        bool isPage = HttpMethods.IsGet(context.Request.Method)
            && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal);
        if (!isPage && context.Features.Get<IStatusCodePagesFeature>() is { } told)
        {
            told.Enabled = false;
        }

        return next(context);
    }
}
