using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Web.Table;

/// <summary>
/// Keeps the files of a job whose names are typed or traced those of the plan on the table: after each length the next start
/// marks move, and what is then sewn at them is to be written down from the plan that has them.
/// </summary>
internal sealed class SheetKeeper(Worktable table) : IDisposable
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(60);
    private readonly SemaphoreSlim _making = new(1);

    /// <summary>Makes the files anew where they are of another plan than the one on the table.</summary>
    /// <returns>What keeps them from being made; empty: they are those of the table.</returns>
    public async Task<ImmutableArray<Problem>> RenewAsync()
    {
        await _making.WaitAsync();
        try
        {
            for (var end = DateTime.UtcNow + LongestWait; table.Now.IsLaying && DateTime.UtcNow < end;)
            {
                await Task.Delay(50);
            }

            if (table.Now.Laid is not { } laid)
            {
                return [.. table.Now.Problems.Where(p => p.Severity == Severity.CannotUse)];
            }

            string outFolder = Path.Combine(table.Folder, OutFolder.Name);
            if (PlanOverview.Read(outFolder).Value is { } made && made.Mark == SheetMarks.Of(laid.Plan))
            {
                return [];
            }

            bool hasSheets = File.Exists(Path.Combine(outFolder, OutPaths.WorkPacket("a4")))
                || File.Exists(Path.Combine(outFolder, OutPaths.WorkPacket("letter")));
            var report = await Task.Run(() => hasSheets ? Bander.Print(table.Folder) : Bander.Make(table.Folder));
            return report.Status == ExitStatus.CannotUse ? report.Problems : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [Problem.OfMachine(new Where(table.Folder), "write", e)];
        }
        finally
        {
            _making.Release();
        }
    }

    public void Dispose() => _making.Dispose();
}
