using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NameBand.Lettering;
using NameBand.Lettering.Faces;

namespace NameBand.Web.Serving;

/// <summary>
/// Faces of the shelf for names in scripts that the computer has no face for: a name is shown and never a row of boxes.
/// Only what faces.css asks for is fetched.
/// </summary>
internal static class FaceEndpoints
{
    public static void Map(IEndpointRouteBuilder app)
    {
        var shelf = new Lazy<FaceShelf>(() => new FaceShelf());
        app.MapGet("/faces/{folder}", (string folder) =>
            shelf.Value.Chain.FirstOrDefault(c => c.Folder == folder) is { } card && shelf.Value.PathOf(card.Name) is { } path
                ? Results.File(path, "font/ttf")
                : Results.NotFound());
    }
}
