using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Pipeline;
using NameBand.Reports;
using NameBand.Web.Strip;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>
/// What the strip's picture asks for: outlines and stitches of what is seen, never a whole job at once. Everything belongs
/// to one layout; asked for another one than lies on the table now, the answer is empty (204).
/// </summary>
internal static class StripEndpoints
{
    private const int MostAsked = 400; // Names in one request: more are never in view at once, and the address is some 2000 letters long.

    public static void Map(IEndpointRouteBuilder app, ShapeShelf shelf)
    {
        // Which layout lies on the table now; pictures of another one are out of date.
        app.MapGet("/strip/version", (Worktable table) => Results.Json(new { layout = table.Now.LayoutNumber }));
        app.MapGet("/strip/{layout:long}/map", (long layout, Worktable table) => Of(table, layout, (now, laid) =>
            Json(json => StripMap.Write(json, layout, laid, now.IsInInches, shelf))));
        app.MapGet("/strip/{layout:long}/garment", (long layout, Worktable table) => Of(table, layout, (_, laid) =>
            Json(json => GarmentMap.Write(json, layout, laid))));
        app.MapGet("/strip/{layout:long}/garment/flat", (long layout, Worktable table) => Of(table, layout, (_, laid) =>
            Results.Text(GarmentDrawing.Svg(laid), NamePicture.Type)));
        app.MapGet("/strip/{layout:long}/shapes", (long layout, string names, Worktable table) => Of(table, layout, (_, laid) =>
        {
            ImmutableArray<PlacedName> all = [.. StripMap.SewnOn(laid.Plan).Select(s => s.Name)];
            return Json(json => Shapes.WriteNames(json, Numbers(names).Where(n => n < all.Length).Select(n => all[n]), shelf));
        }));
        app.MapGet("/strip/pieces", (string numbers) => Json(json => Shapes.WritePieces(
            json, Numbers(numbers).Select(n => (n, shelf.Piece(n))).Where(p => p.Item2 is not null).Select(p => (p.n, p.Item2!)))));
        app.MapGet("/strip/{layout:long}/thread/{name:int}", (long layout, int name, Worktable table) => Of(table, layout, (_, laid) =>
            At(laid, name) is { } at ? Bytes(StitchBytes.Of(laid.SewName(at.Round, at.Name))) : Results.NotFound()));
        app.MapGet("/strip/{layout:long}/picture/{name:int}", (long layout, int name, Worktable table) => Of(table, layout, (_, laid) =>
            StripMap.SewnOn(laid.Plan).ElementAtOrDefault(name) is { } at
                ? Results.Text(NamePicture.Svg(laid, at.Round, at.Name), NamePicture.Type) : Results.NotFound()));
        app.MapGet("/look/{number:int}", (int number, LooksDesk desk) =>
            desk.PictureOf(number) is { } picture ? Results.Text(picture, NamePicture.Type) : Results.NotFound());
        app.MapGet("/strip/{layout:long}/load/{name:int}", (long layout, int name, Worktable table) => Of(table, layout, (_, laid) =>
            At(laid, name) is { } at
                ? Json(json => LoadCells.Write(json, laid.LoadOf(at.Round, at.Name), laid.Fabric)) : Results.NotFound()));
        app.MapGet("/strip/{layout:long}/figures", (long layout, Worktable table) => Of(table, layout, (now, _) =>
            now.Figures is { } figures ? Json(json => WriteFigures(json, figures)) : Results.NoContent()));

        // The browser has drawn its first picture: what was put off until then may begin.
        app.MapPost("/strip/drawn", (Worktable table) => table.FirstDrawn());
        MapHoopings(app);
    }

    /// <summary>The picture and the needle path of a single hooping: for the strip and for the view at the machine.</summary>
    public static void MapHoopings(IEndpointRouteBuilder app)
    {
        app.MapGet("/hooping/{layout:long}/{number:int}", (long layout, int number, Worktable table) => Of(table, layout, (_, laid) =>
            Hooping(laid, number) is { } hooping ? Json(json => HoopMap.Write(json, laid, hooping)) : Results.NotFound()));
        app.MapGet("/hooping/{layout:long}/{number:int}/path", (long layout, int number, Worktable table) => Of(table, layout, (_, laid) =>
            laid.Plan.HasNeedlePaths && Hooping(laid, number) is { } hooping
                ? Bytes(StitchBytes.Of(laid.SewHooping(hooping))) : Results.NotFound()));
    }

    internal static IResult Json(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            write(json);
        }

        return Results.Bytes(stream.ToArray(), "application/json");
    }

    private static IResult Bytes(byte[] bytes) => Results.Bytes(bytes, "application/octet-stream");

    /// <summary>What is sewn there; null where there is none, or no stitches.</summary>
    private static StripMap.OnRound? At(LaidOutJob laid, int index) =>
        laid.Plan.HasNeedlePaths ? StripMap.SewnOn(laid.Plan).ElementAtOrDefault(index) : null;

    private static Hooping? Hooping(LaidOutJob laid, int number) => laid.Plan.Hoopings.FirstOrDefault(h => h.Number == number);

    private static IResult Of(Worktable table, long layout, Func<TableSnapshot, LaidOutJob, IResult> answer)
    {
        var now = table.Now;
        return now.LayoutNumber == layout && now.Laid is { } laid ? answer(now, laid) : Results.NoContent();
    }

    private static IEnumerable<int> Numbers(string text) => text.Split(',').Take(MostAsked)
        .Select(t => int.TryParse(t, NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : -1).Where(n => n >= 0);

    private static void WriteFigures(Utf8JsonWriter json, JobFigures figures)
    {
        json.WriteStartObject();
        foreach (var hooping in figures.Estimate.Hoopings)
        {
            json.WriteNumber(hooping.Number.ToString(CultureInfo.InvariantCulture), Math.Round(figures.Estimate.OwnMinutes(hooping), 2));
        }

        json.WriteEndObject();
    }
}
