using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>What the strip's picture asks for: outlines and stitches of what is seen, never a whole job at once.</summary>
internal static class StripEndpoints
{
    public static void Map(IEndpointRouteBuilder app)
    {
        // Which layout lies on the table now; pictures of another one are out of date.
        app.MapGet("/strip/version", (Worktable table) => Results.Json(new { layout = table.Now.LayoutNumber }));
    }
}
