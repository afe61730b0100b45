using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>Tells what is assumed of a machine that no workshop.json tells of, with what to write to change it.</summary>
internal sealed class AssumedLines(Page page, AssumedWorkshop? assumed)
{
    public void Print()
    {
        if (assumed is null)
        {
            return;
        }

        page.Gap();
        page.Line("Assumed", tone: Tone.Heading);
        page.Note(assumed.Text);
        page.Hanging("→ ", "If yours is different, put its figures into this, and save it as workshop.json in the job's folder:", 2);
        page.Line(Said.Plain(assumed.Line), 4);
    }
}
