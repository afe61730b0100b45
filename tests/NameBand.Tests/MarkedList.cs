using System.IO.Compression;
using System.Text;
using Xunit;

namespace NameBand.Tests;

/// <summary>A list in which all that stands beside the names is marked, and the search for the marks in whatever comes out.</summary>
internal static class MarkedList
{
    public static readonly string[] Marks =
        ["qz7mail", "lantern-secret.example", "7700900461", "73519.57", "73519,57", "Zwq9note", "Zwq9street"];

    // Repeats, a row to be left out, one without a name, one with a column too many, one that begins like a formula.
    public const string Csv =
        """"
        Name,E-mail,Phone,Paid,Anonymous,Note,Street
        Ana Lind,qz7mail1@lantern-secret.example,+447700900461,73519.57,,Zwq9note,Zwq9street 1
        Bo Varga,qz7mail2@lantern-secret.example,07700900461,"73519,57",,"Zwq9note, ""late""",Zwq9street 2
        bo varga,qz7mail3@lantern-secret.example,07700900461,73519.57,,Zwq9note,Zwq9street 3
        Bo Varga,qz7mail2@lantern-secret.example,07700900461,"73519,57",,Zwq9note,Zwq9street 2
        =Pell & Sons,qz7mail4@lantern-secret.example,07700900461,73519.57,,Zwq9note,Zwq9street 4
        -Dash,qz7mail7@lantern-secret.example,07700900461,73519.57,,Zwq9note,Zwq9street 4
        Cleo Marsh,qz7mail5@lantern-secret.example,07700900461,73519.57,yes,Zwq9note,Zwq9street 5
        ,qz7mail6@lantern-secret.example,07700900461,73519.57,,Zwq9note,Zwq9street 6
        Dora Berg,qz7mail8@lantern-secret.example,07700900461,73519.57,,Zwq9note,Zwq9street 7,Zwq9note
        """";

    public static void AssertNoMark(byte[] bytes, string where)
    {
        AssertNoMark(Encoding.Latin1.GetString(bytes), where);
        AssertNoMark(Encoding.Unicode.GetString(bytes), where);
        foreach (string part in Inflated(bytes))
        {
            AssertNoMark(part, where + ", inflated");
        }
    }

    public static void AssertNoMark(string text, string where)
    {
        foreach (string mark in Marks)
        {
            Assert.False(text.Contains(mark, StringComparison.OrdinalIgnoreCase), $"“{mark}” in {where}");
        }
    }

    /// <summary>Whatever in a file can be inflated: the streams of a PDF, the texts and pixels of a PNG.</summary>
    private static IEnumerable<string> Inflated(byte[] bytes)
    {
        for (int at = 0; at + 2 < bytes.Length; at++)
        {
            if (bytes[at] != 0x78 || bytes[at + 1] is not (0x01 or 0x5E or 0x9C or 0xDA))
            {
                continue;
            }

            using var into = new MemoryStream();
            try
            {
                using var inflating = new ZLibStream(new MemoryStream(bytes, at, bytes.Length - at), CompressionMode.Decompress);
                inflating.CopyTo(into);
            }
            catch (InvalidDataException)
            {
                // Not one after all, or it goes on in another chunk.
            }

            yield return Encoding.Latin1.GetString(into.GetBuffer(), 0, (int)into.Length);
        }
    }
}
