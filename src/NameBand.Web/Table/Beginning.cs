using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using NameBand.Reports;

namespace NameBand.Web.Table;

/// <summary>
/// What is known of a job whose edge is not: which lists it has, and which of their columns is which. The same for all tabs; once
/// the edge is known it goes into job.json, and this holds nothing more.
/// </summary>
public sealed class Beginning(Worktable table)
{
    private const int MostFound = 50; // Lists to be ticked: a folder with more is not a job's, and the page would not end.

    private static readonly string[] Patterns = ["*.csv", "*.tsv", "*.txt", "*.xlsx"];

    private readonly Hearers _hearers = new();
    private readonly Lock _lock = new();
    private ImmutableArray<string> _chosen = [];
    private ImmutableArray<string> _left = [];
    private ImmutableArray<JobEdit> _known = [];
    private ImmutableDictionary<string, string> _sheets = ImmutableDictionary<string, string>.Empty;
    private (string Print, NamesReport Report)? _heard;

    /// <summary>Told when something is known besides, from any thread.</summary>
    public event Action? Changed
    {
        add => _hearers.Add(value);
        remove => _hearers.Remove(value);
    }

    /// <summary>Files of the folder that may be lists of names.</summary>
    public ImmutableArray<string> Found =>
        [.. Patterns.SelectMany(p => new DirectoryInfo(table.Folder).EnumerateFiles(p)).Select(f => f.Name)
        .Where(f => !OwnFiles.Has(f) && !f.StartsWith('.')).Distinct().Order(StringComparer.Ordinal).Take(MostFound)];

    /// <summary>Those that are taken: what was dropped or ticked, and a single one of itself.</summary>
    public ImmutableArray<string> Lists
    {
        get
        {
            var found = Found;
            return [.. found.Where(f => (_chosen.Contains(f) || found.Length == 1) && !_left.Contains(f))];
        }
    }

    /// <summary>What job.json will say.</summary>
    public ImmutableArray<JobEdit> Edits =>
        [new JobEdit("lists", JsonSerializer.Serialize(Lists.Select(l => _sheets.TryGetValue(l, out string? sheet) ? $"{l}#{sheet}" : l))),
        .. _known];

    /// <summary>The job as far as it is known; null: there is no list.</summary>
    public BandJob? Job => Lists.IsEmpty ? null : BegunJob.Check(table.Folder, Edits).Value;

    public void Choose(ImmutableArray<string> lists, bool isChosen)
    {
        lock (_lock)
        {
            _chosen = isChosen ? [.. _chosen.Union(lists)] : [.. _chosen.Except(lists)];
            _left = isChosen ? [.. _left.Except(lists)] : [.. _left.Union(lists)];
        }

        _hearers.Tell();
    }

    /// <summary>Says which sheet of a workbook has the names.</summary>
    public void ChooseSheet(string list, string sheet)
    {
        lock (_lock)
        {
            _sheets = _sheets.SetItem(list, sheet);
        }

        _hearers.Tell();
    }

    /// <summary>Workbooks with several sheets, and the one that is taken of each.</summary>
    public ImmutableArray<(string List, ImmutableArray<string> Sheets, string Taken)> Workbooks =>
        [.. Lists.Select(l => (List: l, ListPreview.Read(table.Folder, l).Value?.Sheets)).Where(l => l.Sheets is { Length: > 1 })
            .Select(l => (l.List, l.Sheets!.Value, _sheets.GetValueOrDefault(l.List, l.Sheets.Value[0])))];

    /// <summary>Says what a column is.</summary>
    public void Know(JobEdit edit)
    {
        lock (_lock)
        {
            _known = [.. _known.Where(k => k.Path != edit.Path), edit];
        }

        _hearers.Tell();
    }

    /// <summary>What the lists say; null: there is none. Read once as long as nothing in them has changed.</summary>
    public NamesReport? Heard()
    {
        if (Lists.IsEmpty)
        {
            return null;
        }

        string print = string.Join('\n', Edits.Select(e => $"{e.Path} {e.Json}")
            .Concat(Lists.Append(Corrections.FileName).Select(f => JobStore.Read(table.Folder, f).Fingerprint)));
        if (_heard is { } heard && heard.Print == print)
        {
            return heard.Report;
        }

        var report = Bander.ReadLists(table.Folder, Edits);
        _heard = (print, report);
        return report;
    }
}
