using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Measuring;
using Xunit;

namespace NameBand.Tests.Lettering;

/// <summary>Every face that travels with the program has its licence beside it, a reason, and opens.</summary>
public class ShelfFoldersTests
{
    private const long MostBytes = 9_000_000;

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "fonts-open");

    private static IEnumerable<FaceCard> AllCards => LetteringRig.Shelf.Cards.Concat(LetteringRig.Shelf.SheetCards);

    public static TheoryData<string> Folders() =>
        new(Directory.GetDirectories(Folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_face_has_its_licence_its_reason_and_opens(string folder)
    {
        var card = AllCards.SingleOrDefault(c => c.Folder == folder);
        Assert.True(card is not null, $"{folder} has no readable face.json");
        string licence = File.ReadAllText(Path.Combine(Folder, folder, "LICENCE.txt"));
        Assert.StartsWith(card.Copyright.Split(';')[0], licence, StringComparison.Ordinal);
        string sentence = card.Licence switch
        {
            "SIL Open Font License 1.1" => "The fonts, including any derivative works, can be bundled",
            "Apache License 2.0" => "Grant of Copyright License",
            _ => throw new InvalidOperationException($"{card.Licence} is not a licence known to let the file be passed on."),
        };
        Assert.Contains(sentence, licence.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.True(
            card.Reason.English.Length > 20 && !card.Reason.English.Contains('\n', StringComparison.Ordinal),
            $"{folder}: “{card.Reason}” is not a one-line reason");
        Assert.NotEqual("", card.Source);
        var opened = LetteringRig.Shelf.Open(card);
        Assert.True(opened.IsUsable, string.Join(' ', opened.Problems));
        Assert.True(opened.Value!.CapHeightUnits > 0);
    }

    [Fact]
    public void There_are_at_least_eight_faces_to_choose_and_all_stay_small_enough_to_download()
    {
        Assert.True(LetteringRig.Shelf.Cards.Count(c => c.Fallback is null or 1) >= 8);
        Assert.True(Directory.GetFiles(Folder, "*", SearchOption.AllDirectories).Sum(f => new FileInfo(f).Length) < MostBytes);
    }

    [Fact]
    public void The_list_of_faces_for_people_names_every_one()
    {
        string readme = File.ReadAllText(Path.Combine(Folder, "README.md"));
        Assert.All(AllCards, c => Assert.Contains(
            $"| {c.Name} | `{c.Folder}/{c.File}` | {c.Licence} | {c.Reason} |", readme, StringComparison.Ordinal));
    }

    [Fact]
    public void A_face_of_the_chain_covers_every_script_it_is_asked_for()
    {
        foreach (var card in LetteringRig.Shelf.Chain)
        {
            var face = LetteringRig.Shelf.Open(card).Value!;
            Assert.NotEmpty(card.Scripts);
            // Kana are sampled as one; Bopomofo is not sampled.
            foreach (string code in card.Scripts.Where(c => c is not ("Kana" or "Bopo")))
            {
                Assert.True(ScriptSample.All.First(s => s.Code == code).IsCoveredBy(face), $"{card.Name} lacks letters of {code}");
            }
        }
    }

    [Fact]
    public void Every_script_that_is_sampled_has_a_face_in_the_chain()
    {
        foreach (var sample in ScriptSample.All)
        {
            Assert.Contains(
                LetteringRig.Shelf.Chain, c => c.Scripts.Contains(sample.Code) && sample.IsCoveredBy(LetteringRig.Shelf.Open(c).Value!));
        }
    }
}
