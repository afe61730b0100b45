using NameBand.Common;
using NameBand.Lettering.Fonts;

namespace NameBand.Lettering.Faces;

/// <summary>Reads a font file of a stranger: inside its folder, an ordinary file, not too large.</summary>
internal static class FaceFile
{
    // Faces of all Han signs take 10 to 20 MB (from memory): a larger file would only fill the memory. Our assumption.
    private const long LargestBytes = 30 * 1024 * 1024;
    private const string Key = "lettering.face";
    private const string JobFile = "job.json";

    public static Where Where { get; } = new(JobFile, Key: Key);

    /// <summary>A path is meant when it has a folder in it or ends like a font file.</summary>
    public static bool IsPath(string nameOrPath) =>
        nameOrPath.Contains('/', StringComparison.Ordinal) || nameOrPath.Contains('\\', StringComparison.Ordinal)
        || Path.GetExtension(nameOrPath).ToLowerInvariant() is ".ttf" or ".otf" or ".ttc" or ".otc" or ".woff" or ".woff2";

    public static Result<Face> OpenInside(string folder, string given)
    {
        string shown = PlainText.Short(given, 80);
        if (Inside(folder, given) is not { } name)
        {
            return Fail(
                $"The font file “{shown}” lies outside the job's folder.", "Copy it into the job's folder and give its name alone.");
        }

        if (InnerFile.Objection(folder, name) is { } objection)
        {
            return Fail(objection.Found, objection.Mend);
        }

        if (!InnerFile.IsPlain(folder, name))
        {
            return Fail(
                $"There is no font file “{shown}” in the job's folder.",
                "Put it there, or choose one of the faces that `nameband faces` lists.");
        }

        return Open(
            "job:" + name, null, (folder, name), Where, "Choose another font file, or one of the faces that `nameband faces` lists.");
    }

    /// <param name="name">Null: the name in the file itself.</param>
    /// <param name="at">The folder it lies in, and its name inside.</param>
    public static Result<Face> Open(
        string id, string? name, (string Folder, string Name) at, Where where, Said mend, bool helpsOut = false)
    {
        string file = PlainText.Short(Path.GetFileName(at.Name), 80);
        try
        {
            return Result.Of(Face.FromBytes(id, name, file, Read(at.Folder, at.Name), helpsOut));
        }
        catch (FontFault fault)
        {
            return Result.Fail<Face>(Problem.CannotUse(where, $"The font file “{file}” cannot be used: {fault.What}.", mend));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Result.Fail<Face>(Problem.CannotUse(
                where, $"The font file “{file}” cannot be read.", "Check that it is a file you may read, then try again."));
        }
    }

    private static Result<Face> Fail(Said found, Said mend) => Result.Fail<Face>(Problem.CannotUse(Where, found, mend));

    /// <summary>Reads a whole file into memory that does not move, since native code keeps its address.</summary>
    private static byte[] Read(string folder, string name)
    {
        if (InnerFile.IsEmpty(folder, name))
        {
            return [];
        }

        using var file = InnerFile.Open(folder, name);
        long length = file.Length;
        if (length > LargestBytes)
        {
            throw new FontFault($"it is larger than {LargestBytes / 1024 / 1024} MB");
        }

        byte[] bytes = GC.AllocateUninitializedArray<byte>((int)length, pinned: true);
        return file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false) == bytes.Length
            ? bytes : throw new FontFault("it ends too early");
    }

    /// <summary>The name inside the folder, forward slashes; null when it leads out of it.</summary>
    private static string? Inside(string folder, string given)
    {
        try
        {
            string path = Path.GetFullPath(Path.Combine(Path.GetFullPath(folder), given.Replace('\\', Path.DirectorySeparatorChar)));
            string name = Path.GetRelativePath(folder, path).Replace('\\', '/');
            return Path.IsPathRooted(name) || name == "." || name.Split('/')[0] == ".." ? null : name;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null; // Impossible names lead nowhere inside.
        }
    }
}
