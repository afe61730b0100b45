using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>Files of a job and of an out folder are opened, copied and listed by <c>Common/InnerFile</c>, which follows no link.</summary>
internal static class OneDoor
{
    private static readonly Dictionary<string, string> Doors = new()
    {
        ["src/NameBand.Core/Common/InnerFile.cs"] = "the door itself",
        ["src/NameBand.Core/Common/WholeFile.cs"] = "writes beside a place, and renames",
        ["src/NameBand.Core/Common/DiskFlush.cs"] = "asks the disk, and reads nothing",
        ["src/NameBand.Core/Job/JobLock.cs"] = "makes the lock file, and takes a link away first",
        ["src/NameBand.Core/Lettering/FaceCard.cs"] = "the program's own folder of faces",
        ["src/NameBand.Core/Lettering/FaceShelf.cs"] = "the program's own folder of faces",
        ["src/NameBand.Core/Output/CaptionFace.cs"] = "the program's own folder of faces",
    };

    private static readonly string[] Openings =
    [
        @"\bFile\s*\.\s*(Open|Read|Write|Append|Copy|Create(?!SymbolicLink))\w*\s*\(",
        @"\bnew\s+FileStream\b",
        @"\bnew\s+Stream(Reader|Writer)\s*\(\s*(Path\b|path\b|"")",
        @"\bDirectory\s*\.\s*(Enumerate\w*|GetFiles|GetDirectories|GetFileSystemEntries)\s*\(",
        @"\.\s*Enumerate(Files|Directories|FileSystemInfos)\s*\(",
        @"\.\s*(OpenRead|OpenText|OpenWrite)\s*\(",
        @"\bSKTypeface\s*\.\s*FromFile\b",
    ];

    public static IEnumerable<string> Violations(SourceFile file)
    {
        string code = CodeText.Of(file.Text);
        return Doors.ContainsKey(file.Path)
            ? []
            : Openings.Where(o => Regex.IsMatch(code, o)).Select(o => $"{file.Path}: {Regex.Match(code, o).Value}…: files of a job are opened through InnerFile");
    }
}
