using Microsoft.AspNetCore.Http;

namespace NameBand.Web.Serving;

/// <summary>
/// Lets in whoever has the worktable's cookie, and gives it to whoever comes by its address. Everything else is refused,
/// whatever it is: what is behind the door needs not know of it.
/// </summary>
internal sealed class Door(RequestDelegate next, PageKey key)
{
    public Task InvokeAsync(HttpContext context)
    {
        int port = context.Connection.LocalPort;
        if (IsWayIn(context.Request))
        {
            return key.Opens(context.Request.Path.Value![PageKey.Way.Length..]) ? OpenAsync(context, port) : RefuseAsync(context);
        }

        return key.IsHeldBy(context.Request, port) ? next(context) : RefuseAsync(context);
    }

    /// <summary>Whether a request brings a word; it may come from a file on the disk, which to a browser is another site.</summary>
    public static bool IsWayIn(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) && request.Path.Value?.StartsWith(PageKey.Way, StringComparison.Ordinal) == true;

    /// <summary>
    /// The page leads on by itself: only a request that it makes is one of this site, to which the cookie is sent. A redirect
    /// would still count as one of the site that the browser came from.
    /// </summary>
    private Task OpenAsync(HttpContext context, int port)
    {
        context.Response.Cookies.Append(
            PageKey.CookieName(port), key.Cookie, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        return SayAsync(context, StatusCodes.Status200OK, DoorPages.Leading("/"));
    }

    private static Task RefuseAsync(HttpContext context) => SayAsync(
        context, StatusCodes.Status403Forbidden,
        DoorPages.Refused(FormattableString.Invariant($"http://127.0.0.1:{context.Connection.LocalPort}/")));

    private static Task SayAsync(HttpContext context, int status, string html)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/html; charset=utf-8";
        context.Response.Headers.CacheControl = "no-store";
        return context.Response.WriteAsync(html);
    }
}
