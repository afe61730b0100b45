using System.Buffers.Binary;
using System.Text;
using NameBand.Tests.OutputRoom;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// Playbacks against Portable Network Graphics, third edition (W3C Recommendation): 5.6 chunk order, 11.3.6 animation
/// (acTL, fcTL, fdAT), annex D the check. The chunks are taken apart by a reader written from that text; the pixels of
/// every frame are decoded by ImageSharp, from a PNG made of that frame's own data.
/// </summary>
public sealed class PlaybackAgainstPngTests(SentSample sent) : IClassFixture<SentSample>
{
    private const int Seconds = 3;

    [Fact]
    public void There_is_one_for_every_hooping() =>
        Assert.Equal(sent.Report.Plan!.Hoopings.Length, Directory.GetFiles(sent.FullPath("playback")).Length);

    [Fact]
    public void Chunks_are_whole_and_in_their_order()
    {
        foreach (string file in Directory.GetFiles(sent.FullPath("playback")))
        {
            var chunks = Read(File.ReadAllBytes(file));
            var types = chunks.Select(c => c.Type).ToList();
            Assert.Equal("IHDR", types[0]);
            Assert.Equal("IEND", types[^1]);
            Assert.Single(types, t => t == "acTL");
            Assert.True(types.IndexOf("PLTE") < types.IndexOf("IDAT"));
            Assert.True(types.IndexOf("acTL") < types.IndexOf("IDAT"));
            Assert.True(types.IndexOf("pHYs") < types.IndexOf("IDAT"));

            // No fcTL before IDAT: the still picture is not part of the animation.
            Assert.True(types.IndexOf("IDAT") < types.IndexOf("fcTL"));
            Assert.Equal(types.LastIndexOf("IDAT") - types.IndexOf("IDAT") + 1, types.Count(t => t == "IDAT"));
            int frames = types.Count(t => t == "fcTL");
            Assert.Equal(frames, BinaryPrimitives.ReadInt32BigEndian(chunks.Single(c => c.Type == "acTL").Data));
            Assert.Equal(Seconds * 6, frames);
            var numbered = chunks.Where(c => c.Type is "fcTL" or "fdAT").ToList();
            Assert.Equal(Enumerable.Range(0, numbered.Count), numbered.Select(c => BinaryPrimitives.ReadInt32BigEndian(c.Data)));
            Assert.Equal(Enumerable.Repeat("fcTL fdAT", frames), numbered.Chunk(2).Select(p => $"{p[0].Type} {p[1].Type}"));
        }
    }

    [Fact]
    public void It_lasts_as_long_as_the_job_says_and_two_seconds_more()
    {
        var controls = Read(First()).Where(c => c.Type == "fcTL").Select(c => c.Data).ToList();
        double seconds =
            controls.Sum(c =>
                BinaryPrimitives.ReadUInt16BigEndian(c.AsSpan(20)) / (double)BinaryPrimitives.ReadUInt16BigEndian(c.AsSpan(22)));
        double last = BinaryPrimitives.ReadUInt16BigEndian(controls[^1].AsSpan(20))
            / (double)BinaryPrimitives.ReadUInt16BigEndian(controls[^1].AsSpan(22));
        Assert.Equal(2, last);
        Assert.Equal(Seconds + 2, seconds, Seconds / 18.0 + 0.02);
    }

    [Fact]
    public void Frames_put_on_each_other_end_with_the_picture_that_stands_still()
    {
        byte[] file = First();
        var chunks = Read(file);
        using var still = Image.Load<Rgb24>(file);
        Assert.Equal(480, still.Width);
        using var shown = new Image<Rgb24>(still.Width, still.Height);
        byte[]? control = null;
        var thread = new List<int>();
        foreach (var chunk in chunks)
        {
            control = chunk.Type == "fcTL" ? chunk.Data : control;
            if (chunk.Type != "fdAT")
            {
                continue;
            }

            int Value(int at) => BinaryPrimitives.ReadInt32BigEndian(control.AsSpan(at));
            Assert.Equal((0, 0), (control![24], control[25]));
            Assert.InRange(Value(12) + Value(4), 1, still.Width);
            Assert.InRange(Value(16) + Value(8), 1, still.Height);
            using var frame = Image.Load<Rgb24>(Alone(chunks, Value(4), Value(8), chunk.Data[4..]));
            for (int y = 0; y < frame.Height; y++)
            {
                for (int x = 0; x < frame.Width; x++)
                {
                    shown[x + Value(12), y + Value(16)] = frame[x, y];
                }
            }

            thread.Add(Count(shown));
        }

        Assert.Equal(Pixels(still), Pixels(shown));
        Assert.True(thread[0] < thread[^1] / 4);
        Assert.All(thread.Zip(thread.Skip(1)), pair => Assert.True(pair.Second > pair.First * 0.97));
    }

    private sealed record Chunk(string Type, byte[] Data);

    /// <summary>The frame's data as a PNG of its own: the same header with the frame's size, the same colours.</summary>
    private static byte[] Alone(List<Chunk> chunks, int width, int height, byte[] data)
    {
        byte[] header = [.. chunks.Single(c => c.Type == "IHDR").Data];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        using var png = new MemoryStream();
        png.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        foreach (var chunk in new[] { new Chunk("IHDR", header), chunks.Single(c => c.Type == "PLTE"), new Chunk("IDAT", data),
            new Chunk("IEND", []) })
        {
            byte[] four = new byte[4];
            BinaryPrimitives.WriteInt32BigEndian(four, chunk.Data.Length);
            png.Write(four);
            byte[] body = [.. Encoding.ASCII.GetBytes(chunk.Type), .. chunk.Data];
            png.Write(body);
            BinaryPrimitives.WriteUInt32BigEndian(four, Check(body));
            png.Write(four);
        }

        return png.ToArray();
    }

    private static List<Chunk> Read(byte[] file)
    {
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], file[..8]);
        var chunks = new List<Chunk>();
        for (int at = 8; at < file.Length;)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(at));
            Assert.Equal(Check(file.AsSpan(at + 4, length + 4)), BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(at + 8 + length)));
            chunks.Add(new Chunk(Encoding.ASCII.GetString(file, at + 4, 4), file[(at + 8)..(at + 8 + length)]));
            at += length + 12;
        }

        return chunks;
    }

    /// <summary>Annex D: the polynomial 0xEDB88320, bit by bit, begun and ended with all ones.</summary>
    private static uint Check(ReadOnlySpan<byte> bytes)
    {
        uint crc = 0xFFFFFFFF;
        foreach (byte b in bytes)
        {
            crc ^= b;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) != 0 ? 0xEDB88320 ^ (crc >> 1) : crc >> 1;
            }
        }

        return crc ^ 0xFFFFFFFF;
    }

    private static int Count(Image<Rgb24> picture) => Pixels(picture).Count(ProofPicture.IsIndigo);

    private static Rgb24[] Pixels(Image<Rgb24> picture)
    {
        var pixels = new Rgb24[picture.Width * picture.Height];
        picture.CopyPixelDataTo(pixels);
        return pixels;
    }

    private byte[] First() => sent.File(Output.OutPaths.Playback(1));
}
