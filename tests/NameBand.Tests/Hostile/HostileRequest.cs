using System.Collections.Immutable;
using System.Text;

namespace NameBand.Tests.Hostile;

/// <summary>A request as text, so that it can be spoilt: a line “METHOD target type”, and the body.</summary>
internal sealed record HostileRequest(string Method, string Target, string Type, byte[] Body)
{
    public const string Kind = "request";

    /// <summary>To the server for screens at the machine instead of the page's own.</summary>
    private const string ToLent = "LENT";

    public static ImmutableArray<byte[]> Seeds { get; } =
    [
        """
        POST /machine/said application/json
        {"hooping":1,"deed":"sewn","minutes":12.5,"hands":3,"machine":"m","note":"by the lamp","mark":"K7Q4"}
        """u8.ToArray(),
        """
        POST /machine/said application/json
        {"name":2,"deed":"sewn","length":63.5,"ended":30,"began":34,"scrap":true}
        """u8.ToArray(),
        "POST /machine/said application/json\n{\"deed\":\"done\",\"step\":\"pressed\",\"round\":1}"u8.ToArray(),
        "POST /machine/said application/json; charset=utf-16\n{}"u8.ToArray(),
        "POST /print application/x-www-form-urlencoded\npaper=A4&k=%20v"u8.ToArray(),
        Encoding.ASCII.GetBytes("POST / multipart/form-data;boundary=part\n--part\r\n" +
            "Content-Disposition: form-data; name=\"k\"\r\n\r\nv\r\n--part--\r\n"),
        "GET /strip/1/shapes?names=0,1,2 text/plain\n"u8.ToArray(),
        "GET /strip/pieces?numbers=0,99 text/plain\n"u8.ToArray(),
        "GET /made/plan.json text/plain\n"u8.ToArray(),
        "LENT /code application/x-www-form-urlencoded\ncode=1234+5678"u8.ToArray(),
        "LENT /machine/said application/json\n{\"hooping\":1,\"deed\":\"again\"}"u8.ToArray(),
    ];

    public bool IsToLent => Method == ToLent;

    public static HostileRequest Of(byte[] input)
    {
        int end = Array.IndexOf(input, (byte)'\n');
        string[] words = Encoding.Latin1.GetString(input.AsSpan(0, end < 0 ? input.Length : end)).Split(' ', 3);
        string target = string.Concat(words.ElementAtOrDefault(1)?.Where(c => c is > ' ' and not '\u007f') ?? []);
        return new HostileRequest(
            words[0] is "GET" or ToLent ? words[0] : "POST", "/" + target.TrimStart('/'),
            string.Concat(words.ElementAtOrDefault(2)?.Where(c => c is >= ' ' and not '\u007f') ?? []), end < 0 ? [] : input[(end + 1)..]);
    }

    /// <summary>Byte for byte what is sent; each character is a byte.</summary>
    public string Said(string host, string cookie) =>
        $"{(Method == "GET" ? "GET" : "POST")} {Target} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n" +
        $"Cookie: {cookie}\r\nContent-Type: {Type}\r\nContent-Length: {Body.Length}\r\n\r\n{Encoding.Latin1.GetString(Body)}";

    /// <summary>What is wrong with how it was answered; null: it was answered, or refused as the asker's fault.</summary>
    /// <param name="status">0: it hung up without a word.</param>
    public static string? Fault(int status) => status is >= 100 and < 500 ? null : $"answered with {status}";
}
