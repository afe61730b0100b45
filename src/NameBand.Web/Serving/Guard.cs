using Microsoft.AspNetCore.Http;
using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>
/// Answers only requests that name this computer and come from the page itself: another site that points its own name at
/// this computer (DNS rebinding), or opens a connection from its own page, is refused. Nothing is fetched from elsewhere.
/// </summary>
internal sealed class Guard(RequestDelegate next)
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data: blob:; "
        + "font-src 'self'; connect-src 'self'; frame-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        if (!IsThisComputer(request.Host, context.Connection.LocalPort) || !(IsFromThePage(request) || Door.IsWayIn(request)))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return context.Response.WriteAsync(((Said)"The worktable answers on this computer only.").ToString());
        }

        Protect(context.Response.Headers);
        return next(context);
    }

    /// <summary>What the browser is told to refuse.</summary>
    public static void Protect(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
    }

    private static bool IsThisComputer(HostString host, int port) => IsHost(host, "127.0.0.1", port) || IsHost(host, "localhost", port);

    /// <summary>The whole of it, letter by letter: what is only like it might be taken for something else farther in.</summary>
    public static bool IsHost(HostString host, string name, int port) =>
        string.Equals(host.Value, FormattableString.Invariant($"{name}:{port}"), StringComparison.OrdinalIgnoreCase)
        || (port == 80 && string.Equals(host.Value, name, StringComparison.OrdinalIgnoreCase));

    private static bool IsFromThePage(HttpRequest request)
    {
        string own = $"{request.Scheme}://{request.Host}";
        return request.Headers.Origin.All(o => o == own) && request.Headers["Sec-Fetch-Site"].All(s => s is "same-origin" or "none");
    }
}
