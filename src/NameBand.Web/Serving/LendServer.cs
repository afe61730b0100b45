using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NameBand.Common;
using NameBand.Web.Machine;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>
/// A server of its own for screens on the maker's network: it knows the view at the machine and nothing else, so that
/// nothing of the worktable can be reached through it by mistake.
/// </summary>
internal static class LendServer
{
    private const string Cookie = "nameband-lent";
    private const string Files = "/_content/NameBand.Web/";

    private static readonly Dictionary<string, string> Served = new(StringComparer.Ordinal)
    {
        ["icon.svg"] = "image/svg+xml",
        ["strip.css"] = "text/css",
        ["machine.css"] = "text/css",
        ["faces.css"] = "text/css",
        ["machine.js"] = "text/javascript",
        ["machine-begin.js"] = "text/javascript",
        ["said.js"] = "text/javascript",
        ["machine-saying.js"] = "text/javascript",
        ["machine-keying.js"] = "text/javascript",
        ["machine-naming.js"] = "text/javascript",
        ["machine-finishing.js"] = "text/javascript",
        ["machine-clock.js"] = "text/javascript",
        ["strip/hoop.js"] = "text/javascript",
        ["strip/data.js"] = "text/javascript",
        ["strip/thread.js"] = "text/javascript",
        ["strip/colours.js"] = "text/javascript",
    };

    /// <param name="files">Where the page's own files are.</param>
    public static async Task<WebApplication> StartAsync(
        PageOptions options, Worktable table, LendDesk desk, IFileProvider files, CancellationToken stop)
    {
        var builder =
            WebApplication.CreateSlimBuilder(new WebApplicationOptions
            {
                ContentRootPath = AppContext.BaseDirectory,
                EnvironmentName = Environments.Production
            });
        builder.Configuration.Sources.Clear();
        builder.Logging.ClearProviders();
        var own = OwnAddress();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 16 * 1024;
            // On the one network whose address is shown, and on no other that this computer may be in.
            kestrel.Listen(own, options.Port == 0 ? 0 : options.Port + 1);
        });
        builder.Services.AddSingleton(table);
        builder.Services.AddRouting();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(1));
        var app = builder.Build();
        app.UseMiddleware<OddRequests>();
        PageLanguage.Use(app);
        app.Use((context, next) => GuardAsync(context, next, desk));
        app.UseRouting();
        app.MapGet("/", context => HtmlAsync(
            context, desk.Holds(context.Request.Cookies[Cookie]) ? LendPages.View
                : LendPages.AskCode(Asked(context, desk, wasWrong: false))));
        app.MapPost("/code", context => ExchangeAsync(context, desk));
        app.MapGet(Files + "{**file}", (string file) =>
            Served.TryGetValue(file, out string? type) && files.GetFileInfo(Files.TrimStart('/') + file) is { Exists: true } found
                ? Results.Stream(found.CreateReadStream(), type)
                : Results.NotFound());
        MachineEndpoints.Map(app, table);
        StripEndpoints.MapHoopings(app);
        FaceEndpoints.Map(app);
        try
        {
            await app.StartAsync(stop).ConfigureAwait(false);
        }
        catch (IOException e)
        {
            throw new PortException(options.Port + 1, e);
        }

        string address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        desk.Url = address.TrimEnd('/') + "/";
        desk.MakeCode();
        return app;
    }

    private static Task GuardAsync(HttpContext context, RequestDelegate next, LendDesk desk)
    {
        var request = context.Request;
        string own = $"{request.Scheme}://{request.Host}";

        // Only this computer's own number is a good host: a name that somebody points here is not.
        bool isOwn = context.Connection.LocalIpAddress is { } here
            && Guard.IsHost(request.Host, here.MapToIPv4().ToString(), context.Connection.LocalPort);
        bool isFromHere = request.Headers.Origin.All(o => o == own) && request.Headers["Sec-Fetch-Site"]
            .All(s => s is "same-origin" or "none");
        bool isOpen = request.Path == "/" || request.Path == "/code" || (request.Path.Value ?? "")
            .EndsWith(".css", StringComparison.Ordinal) || request.Path == Files + "icon.svg";
        Guard.Protect(context.Response.Headers);

        // A form sent without a referrer would not say where it comes from; and plain http knows no opener policy.
        context.Response.Headers["Referrer-Policy"] = "same-origin";
        context.Response.Headers.Remove("Cross-Origin-Opener-Policy");
        context.Response.Headers.CacheControl = "no-store";
        if (!isOwn || !isFromHere || (!isOpen && !desk.Holds(request.Cookies[Cookie])))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return context.Response.WriteAsync(((Said)"This view was not lent to you.").ToString());
        }

        return next(context);
    }

    private static async Task ExchangeAsync(HttpContext context, LendDesk desk)
    {
        if (!context.Request.HasFormContentType)
        {
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            return;
        }

        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        if (desk.Exchange(form["code"].ToString(), Sender(context)) is not { } token)
        {
            var asked = Asked(context, desk, wasWrong: true);
            context.Response.StatusCode =
                asked == CodeAsked.NotHeard ? StatusCodes.Status429TooManyRequests : StatusCodes.Status403Forbidden;
            await HtmlAsync(context, LendPages.AskCode(asked));
            return;
        }

        context.Response.Cookies.Append(Cookie, token, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = "/";
    }

    private static CodeAsked Asked(HttpContext context, LendDesk desk, bool wasWrong) =>
        desk.Code is null ? CodeAsked.NoneHolds
        : desk.IsDeafTo(Sender(context)) ? CodeAsked.NotHeard
        : wasWrong ? CodeAsked.Again : CodeAsked.First;

    private static string Sender(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";

    private static Task HtmlAsync(HttpContext context, string html)
    {
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(html);
    }

    /// <summary>This computer's number on the network that has a way out, or on any.</summary>
    private static IPAddress OwnAddress()
    {
        var all = NetworkInterface.GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .OrderByDescending(n => n.GetIPProperties().GatewayAddresses.Count)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Where(a => a.Address.AddressFamily == AddressFamily.InterNetwork)
            .Select(a => a.Address);
        return all.FirstOrDefault() ?? IPAddress.Loopback;
    }
}
