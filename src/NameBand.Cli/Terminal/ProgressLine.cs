using System.Diagnostics;
using NameBand.Common;
using NameBand.Reports;

namespace NameBand.Cli.Terminal;

/// <summary>
/// One line at the foot of a terminal that says what is being done and how far it has come. It is written over and
/// over in place, cleared at the end, and not written at all where nobody looks.
/// </summary>
internal sealed class ProgressLine(Outlet outlet) : IProgress<Progress>, IDisposable
{
    private const int BarCells = 24; // Cells: leaves the greater part of a line of 80 for what is being done.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(80);
    private readonly Lock _writing = new();
    private readonly Stopwatch _sinceLast = new();
    private Said? _what;
    private bool _isShown;

    public void Report(Progress value)
    {
        if (!outlet.IsTerminal)
        {
            return;
        }

        lock (_writing)
        {
            bool isNew = value.What != _what;
            if (!isNew && _sinceLast.IsRunning && _sinceLast.Elapsed < Pause && value.Done < value.Of)
            {
                return;
            }

            _what = value.What;
            _sinceLast.Restart();
            _isShown = true;
            Write(Line(value));
        }
    }

    public void Dispose()
    {
        if (_isShown)
        {
            Write("");
        }
    }

    /// <summary>Leaves the cursor at the line's beginning, so that a key pressed meanwhile is wiped with it.</summary>
    private void Write(string line)
    {
        outlet.Writer.Write('\r' + line.PadRight(outlet.Width - 1) + '\r');
        outlet.Writer.Flush();
    }

    private string Line(Progress value)
    {
        if (value.Of <= 0)
        {
            return Cut($"{value.What} …");
        }

        int of = value.Of;
        int done = Math.Clamp(value.Done, 0, of);
        int full = (int)((long)BarCells * done / of);
        string bar = new string('━', full) + new string('╌', BarCells - full);
        Said line = $"{bar} {done} of {of}  {value.What}";
        return Cut(line.ToString());
    }

    private string Cut(string line) => line.Length < outlet.Width ? line : line[..(outlet.Width - 1)];
}
