using System.Collections.Immutable;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Reports;
using NameBand.Web.Machine;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>What the view at the machine asks for and says; the same for the maker's own screen and for a lent one.</summary>
internal static class MachineEndpoints
{
    // A note and a machine of 500 letters each take 6 kB where every letter is written as six (\u00e4).
    private const int MostBytes = 8 * 1024;

    public static void Map(IEndpointRouteBuilder app, Worktable table)
    {
        app.MapGet("/machine/state", (string? stamp) =>
        {
            // Where the sewing is, no picture of the strip is waited for.
            table.FirstDrawn();
            var now = table.Now;
            string current = MachineState.Stamp(now, table.Folder);
            return stamp == current
                ? Results.NoContent()
                : StripEndpoints.Json(json => MachineState.Write(json, current, now, Look(table)));
        });
        app.MapGet("/machine/made/{layout:long}/{number:int}", (long layout, int number) => IsMade(table, layout, number));
        app.MapPost("/machine/said", (HttpRequest request) => SaidAsync(request, table));
    }

    private static SewingReport Look(Worktable table) => Bander.Sewn(table.Folder, null, null, Pause);

    /// <summary>Whether the needle path in the out folder is the one on the table: only then is what is shown what will be sewn.</summary>
    private static IResult IsMade(Worktable table, long layout, int number)
    {
        var now = table.Now;
        if (now.LayoutNumber != layout || now.Laid is not { } laid
            || laid.Plan.Hoopings.FirstOrDefault(h => h.Number == number) is not { } hooping)
        {
            return Results.NoContent();
        }

        string file = Path.Combine(table.Folder, "out", OutPaths.NeedlePath(number));
        if (!laid.Plan.HasNeedlePaths || !File.Exists(file))
        {
            return Results.Json(new { made = "missing" });
        }

        using var path = new MemoryStream();
        NeedlePathCsv.Write(path, laid.SewHooping(hooping));
        bool same = laid.SewnHoopings.Contains(number) || path.ToArray().AsSpan().SequenceEqual(File.ReadAllBytes(file));
        return Results.Json(new { made = same ? "same" : "other" });
    }

    private static async Task<IResult> SaidAsync(HttpRequest request, Worktable table)
    {
        // A page of another origin cannot send JSON here without being asked first, and is refused by the guard anyway.
        if (request.ContentType?.StartsWith("application/json", StringComparison.OrdinalIgnoreCase) != true
            || request.ContentLength is not <= MostBytes)
        {
            return Results.StatusCode(StatusCodes.Status415UnsupportedMediaType);
        }

        SewingWord? word;
        try
        {
            using var said =
                await JsonDocument.ParseAsync(request.Body, new JsonDocumentOptions { MaxDepth = 4 }, request.HttpContext.RequestAborted);
            word = SaidWord.Read(said.RootElement);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // No JSON, or half a character in it, which can be written there and be no text.
            word = null;
        }

        if (word is null)
        {
            return Results.StatusCode(StatusCodes.Status400BadRequest);
        }

        try
        {
            if (word is { Names: not null, Deed: SewingDeed.Sewn } && await table.Sheets.RenewAsync() is { IsEmpty: false } unmade)
            {
                return Answer(null, unmade);
            }

            var report = await Task.Run(() => Bander.Sewn(table.Folder, null, word, Pause));
            if (report.Said is not null || report.MeasuredName is not null)
            {
                table.StartOver();
            }

            if (report.MeasuredName is not null)
            {
                // The marks after it move: their files are made while the next name is sewn.
                _ = table.Sheets.RenewAsync();
            }

            return Answer(report, report.Problems);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Answer(null, [Problem.OfMachine(new Where(table.Folder), "log it", e)]);
        }
    }

    /// <summary>Whether it was written down, and why not.</summary>
    private static IResult Answer(SewingReport? report, ImmutableArray<Problem> problems) => StripEndpoints.Json(json =>
    {
        bool isWritten = report is { Said: not null } or { MeasuredName: not null };
        json.WriteStartObject();
        json.WriteBoolean("written", isWritten);
        if (report?.Said is { Of: SewingSubject.Hooping } said)
        {
            var names = report.Hoopings.FirstOrDefault(h => h.Number == said.Hooping)?.Names ?? [];
            json.WriteString("names", Wording.List([.. names.Select(n => $"“{n}”")]).ToString());
        }

        if (report?.PatchOnClothMm is { } patch)
        {
            json.WriteString("patch", Length.FromMm(patch).InMillimetres().ToString());
        }

        MachineState.Problems(json, isWritten ? [] : problems);
        json.WriteEndObject();
    });

    private static void Pause() => Thread.Sleep(50);
}
