using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What is said differently when no machine follows a file.</summary>
internal static class WayWords
{
    /// <summary>Half a sentence: what the letters are.</summary>
    public static Said Face(MakeAnswer answer) => answer.OwnLetters
        ? (Said)$" in your machine’s own letters with gaps of {answer.SpacingMm:0.0} mm{(answer.Ways is null ? "" : (Said)$", and in {answer.Face}")}"
        : $" in {answer.Face}";

    public static Said Sittings(MakeAnswer answer) => !answer.Unhooped ? Words.Count(answer.Hoopings, "hooping")
        : answer.Hoopings == answer.Rounds.Count
            ? (Said)$"each strip in one run, without a hoop ({Words.Count(answer.Rounds.Count, "run")})"
            : (Said)$"{Words.Count(answer.Hoopings, "run")}, without a hoop";

    /// <summary>What to do after the proofs have been looked at.</summary>
    public static IEnumerable<Said> Steps(MakeAnswer answer, string folder) => answer.OwnLetters
        ?
        [
            $"Print {folder}/key-in-a4.pdf (or key-in-letter.pdf): it says what to key in and where each name starts.",
            "Sew the first names on a scrap and measure them against the sheet before you begin the real strip.",
            !answer.SetsOut ? "When names drift off their marks, start the next one at its own mark all the same."
            : "When names drift off their marks, add where one ended to drift.csv (number,name,end_mm) in the job and run make again.",
        ]
        :
        [
            $"Print {folder}/template-a4.pdf (or template-letter.pdf) at 100 % and check its test square with a ruler.",
            "Tape the pages together at their marks, pin them under or over the strip, and trace.",
        ];
}
