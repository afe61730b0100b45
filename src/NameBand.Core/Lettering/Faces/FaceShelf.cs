using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Lettering.Faces;

/// <summary>
/// The faces that travel with the program (the folder fonts-open), and the way to a font file in a job's folder.
/// Faces are opened when first needed and then kept. Safe to use from several threads.
/// </summary>
public sealed class FaceShelf
{
    private const string FolderName = "fonts-open";
    private const string CardName = "face.json";
    private static readonly Said InstallAgain = "Install the program again, with its folder fonts-open.";

    private static readonly string OwnFolder = Path.Combine(AppContext.BaseDirectory, FolderName);

    // What travels with the program does not change while it runs.
    private static readonly Lazy<ImmutableArray<FaceCard>> OwnCards = new(() => ReadCards(OwnFolder));

    private readonly string _folder;
    private readonly ConcurrentDictionary<string, Lazy<LetterFigures>> _figures = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<Result<Face>>> _open = new(StringComparer.Ordinal);

    /// <param name="folder">The folder that holds a folder for each face; null: fonts-open beside the program.</param>
    public FaceShelf(string? folder = null)
    {
        _folder = folder ?? OwnFolder;
        var all = folder is null ? OwnCards.Value : ReadCards(folder);
        Cards = [.. all.Where(c => !c.IsForSheets)];
        SheetCards = [.. all.Where(c => c.IsForSheets)];
        Chain = [.. Cards.Where(c => c.Fallback is not null).OrderBy(c => c.Fallback).ThenBy(c => c.Folder, StringComparer.Ordinal)];
    }

    /// <summary>The faces on the shelf that names can be sewn in, by folder name.</summary>
    public ImmutableArray<FaceCard> Cards { get; }

    /// <summary>The faces that sheets are set in.</summary>
    public ImmutableArray<FaceCard> SheetCards { get; }

    /// <summary>The faces asked in turn for what the chosen one lacks.</summary>
    public ImmutableArray<FaceCard> Chain { get; }

    /// <summary>Opens a face on the shelf by its name, or a TTF or OTF in the job's folder by its path.</summary>
    /// <param name="faceNameOrPath">“Nunito Bold”, “nunito-bold”, the file's name, a family with one face, or a path inside the
    /// folder.</param>
    public Result<Face> Open(string faceNameOrPath, string jobFolder)
    {
        if (FaceFile.IsPath(faceNameOrPath))
        {
            var inFolder = FaceFile.OpenInside(jobFolder, faceNameOrPath);
            return inFolder.Value is null && FindFile(faceNameOrPath) is { } named ? Open(named) : inFolder;
        }

        if (Cards.IsEmpty)
        {
            return Result.Fail<Face>(Problem.CannotUse(
                FaceFile.Where, "The program's own faces are missing: there is no folder fonts-open beside it.", InstallAgain));
        }

        return Find(faceNameOrPath) is { } card ? Open(card) : Result.Fail<Face>(Unknown(faceNameOrPath));
    }

    /// <summary>Opens a face of the shelf.</summary>
    public Result<Face> Open(FaceCard card) => OpenOnce(card, card.Folder, helpsOut: false);

    /// <summary>Opens a face of the shelf to stand in for letters another face lacks.</summary>
    internal Result<Face> OpenToHelpOut(FaceCard card) => OpenOnce(card, card.Folder + "+", helpsOut: true);

    private Result<Face> OpenOnce(FaceCard card, string id, bool helpsOut) => _open.GetOrAdd(id, _ => new Lazy<Result<Face>>(() =>
    {
        var where = new Where(FolderName + "/" + card.Folder + "/" + card.File);
        return FaceFile.Open(id, card.Name, (Path.Combine(_folder, card.Folder), card.File), where, InstallAgain, helpsOut);
    })).Value;

    /// <summary>How fine letters are, measured once.</summary>
    /// <param name="letters">Which letters of which face; of equal ones the figures are equal.</param>
    internal LetterFigures FiguresOf(string letters, Func<LetterFigures> measure) =>
        _figures.GetOrAdd(letters, _ => new Lazy<LetterFigures>(measure)).Value;

    /// <summary>Full path of a shelf face's file; null when there is no such face.</summary>
    public string? PathOf(string name) =>
        Find(name) is { } card ? Path.Combine(_folder, card.Folder, card.File) : null;

    private static ImmutableArray<FaceCard> ReadCards(string folder) => Directory.Exists(folder)
        ? [.. Directory.GetDirectories(folder).Order(StringComparer.Ordinal)
            .Select(f => FaceCard.Read(Path.Combine(f, CardName))).OfType<FaceCard>()]
        : [];

    private FaceCard? FindFile(string name) =>
        Cards.FirstOrDefault(c => string.Equals(c.File, name, StringComparison.OrdinalIgnoreCase));

    private FaceCard? Find(string name)
    {
        string wanted = Plain(name);
        var exact = Cards.FirstOrDefault(c => Plain(c.Name) == wanted || Plain(c.Folder) == wanted
            || Plain(Path.GetFileNameWithoutExtension(c.File)) == wanted);
        if (exact is not null || wanted.Length == 0)
        {
            return exact;
        }

        var family = Cards.Where(c => Plain(Family(c.Name)) == wanted).ToList();
        return family.Count == 1 ? family[0] : null;
    }

    private static string Family(string name) => name.EndsWith(" Bold", StringComparison.Ordinal) ? name[..^5] : name;

    private Problem Unknown(string name)
    {
        string? near = NearestWord.Find(name, Cards.Select(c => c.Name));
        if (near is null && NearestWord.Find(Plain(name), Cards.Select(c => Plain(Family(c.Name)))) is { } family)
        {
            near = Cards.First(c => Plain(Family(c.Name)) == family).Name;
        }

        return Problem.CannotUse(
            FaceFile.Where, $"There is no face “{PlainText.Short(name)}” here.",
            $"{(near is null ? "" : (Said)$"Did you mean “{near}”? ")}"
            + $"`nameband faces` lists the faces; a TTF or OTF of your own goes into the job's folder and is named with its ending.");
    }

    private static string Plain(string name) => new([.. name.ToLowerInvariant().Where(char.IsLetterOrDigit)]);
}
