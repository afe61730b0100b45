using System.Runtime.CompilerServices;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using Xunit;

namespace NameBand.Tests.LetteringRoom;

public class FaceMemoryTests
{
    /// <summary>A page that is open for a day opens a job's own face thousands of times.</summary>
    [Fact]
    public void A_face_that_nobody_has_any_longer_gives_back_the_memory_of_its_file()
    {
        var file = OpenAndForget();
        for (int i = 0; i < 50 && file.IsAlive; i++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        Assert.False(file.IsAlive);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static WeakReference OpenAndForget()
    {
        byte[] read = File.ReadAllBytes(new FaceShelf().PathOf("Nunito Bold")!);
        byte[] bytes = GC.AllocateUninitializedArray<byte>(read.Length, pinned: true);
        read.CopyTo(bytes, 0);
        var face = Face.FromBytes("trial", null, "trial.ttf", bytes);
        Assert.True(face.Has('A'));
        return new WeakReference(bytes);
    }
}
