using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;
using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>
/// A request that cannot be read is the asker's fault and is told so; only what is left is a fault of the program.
/// </summary>
internal sealed class OddRequests(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (Exception e) when (StatusOf(e, context.Request) is { } status && !context.Response.HasStarted)
        {
            context.Response.Clear();
            Guard.Protect(context.Response.Headers);
            context.Response.StatusCode = status;
            await context.Response.WriteAsync(((Said)"This request cannot be read.").ToString());
        }
    }

    private static int? StatusOf(Exception fault, HttpRequest request) => fault switch
    {
        BadHttpRequestException bad => bad.StatusCode,
        AntiforgeryValidationException => StatusCodes.Status400BadRequest,
        // Too many keys, too long ones, parts without an end, letters in a code that nobody reads any longer.
        InvalidDataException or IOException or NotSupportedException when request.HasFormContentType => StatusCodes.Status400BadRequest,
        _ => null,
    };
}
