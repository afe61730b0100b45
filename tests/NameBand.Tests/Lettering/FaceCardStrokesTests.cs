using NameBand.Lettering;
using NameBand.Lettering.Faces;
using Xunit;

namespace NameBand.Tests.LetteringRoom;

public class FaceCardStrokesTests
{
    /// <summary>What the cards say, in thousandths, is what measuring gives.</summary>
    [Fact]
    public void Every_card_has_the_strokes_that_its_face_has()
    {
        var shelf = new FaceShelf();
        Assert.NotEmpty(shelf.Cards);
        Assert.All(shelf.Cards, card =>
        {
            var face = shelf.Open(card).Value!;
            Assert.Equal(face.ThinnestStrokePart, card.ThinnestStrokePart!.Value, 0.0006);
            Assert.Equal(face.MainStemPart, card.MainStemPart!.Value, 0.0006);
            Assert.Equal(face.SmallestCounterPart ?? 0, card.SmallestCounterPart ?? 0, 0.0006);
        });
    }
}
