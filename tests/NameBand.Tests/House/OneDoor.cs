using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>
/// Files of a job and of an out folder are opened, copied and listed by <c>Common/InnerFile</c>, which follows no link; all that is
/// changed on the disk is changed by <c>Common/Disk</c>, where tests see each step.
/// </summary>
internal static class OneDoor
{
    private static readonly Dictionary<string, string> Doors = new()
    {
        ["src/NameBand.Core/Common/InnerFile.cs"] = "the door itself",
        ["src/NameBand.Core/Common/DiskFlush.cs"] = "asks the disk, and reads nothing",
        ["src/NameBand.Core/Common/PosixOpen.cs"] = "the system's own way in, closed to the programs that are started",
        ["src/NameBand.Core/Common/Disk.cs"] = "changes, and reads nothing",
        ["src/NameBand.Core/Job/JobLock.cs"] = "reads who holds a lock that may be opened by nobody else",
        ["src/NameBand.Core/Lettering/Faces/FaceCard.cs"] = "the program's own folder of faces",
        ["src/NameBand.Core/Lettering/Faces/FaceShelf.cs"] = "the program's own folder of faces",
        ["src/NameBand.Core/Output/Drawing/CaptionFace.cs"] = "the program's own folder of faces",
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
        @"\bPosixOpen\s*\.",
        @"\bEntryPoint\s*=\s*""(f?open|openat)""",
    ];

    private static readonly string[] Changes =
    [
        @"\bFile\s*\.\s*(Delete|Move|Set\w+|Replace|CreateSymbolicLink|WriteAll\w+)\s*\(",
        @"\bDirectory\s*\.\s*(CreateDirectory|CreateSymbolicLink|Delete|Move|Set\w+)\s*\(",
        @"\b(FolderRename|DiskFlush)\s*\.",
        @"\bFileMode\s*\.\s*(Create|CreateNew|OpenOrCreate|Append|Truncate)\b(?<!Disk\.Open\([^;]*)",
        @"\.\s*(MoveTo|CreateSubdirectory)\s*\(\s*(Path\b|path\b|"")",
    ];

    public static IEnumerable<string> Violations(SourceFile file) => Opened(file).Concat(Changed(file));

    private static IEnumerable<string> Changed(SourceFile file)
    {
        string code = CodeText.Of(file.Text);
        return file.Path == "src/NameBand.Core/Common/Disk.cs"
            ? []
            : Changes.Where(c => Regex.IsMatch(code, c))
                .Select(c => $"{file.Path}: {Regex.Match(code, c).Value}…: what changes the disk goes through Disk");
    }

    private static IEnumerable<string> Opened(SourceFile file)
    {
        string code = CodeText.Of(file.Text);
        return Doors.ContainsKey(file.Path)
            ? []
            : Openings.Where(o => Regex.IsMatch(code, o))
                .Select(o => $"{file.Path}: {Regex.Match(code, o).Value}…: files of a job are opened through InnerFile");
    }
}
