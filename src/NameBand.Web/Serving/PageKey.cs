using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace NameBand.Web.Serving;

/// <summary>
/// The secret of one job's worktable: it opens with a word that stands in its address, and stays open for whoever has the
/// cookie that the word was exchanged for. Both come from the secret, and neither tells it or the other one.
/// </summary>
internal sealed class PageKey
{
    public const int SecretBytes = 32; // 256 bits: as long as the HMAC-SHA-256 it is a key of.

    /// <summary>Where the word is exchanged.</summary>
    public const string Way = "/open/";

    /// <summary>No letter that is easily taken for another: an address may have to be typed from one window into another.</summary>
    private const string Letters = "abcdefghjkmnpqrstuvwxyz023456789";
    private const int WordLetters = 20; // Of 32 kinds, five bits each: 100 bits, which nobody tries out.
    private const int Together = 5; // Letters in a group, as one reads them from one window into another.

    private readonly byte[] _secret;
    private readonly byte[] _word;
    private readonly byte[] _cookie;

    /// <exception cref="ArgumentException">The secret is too short.</exception>
    public PageKey(byte[] secret)
    {
        if (secret.Length != SecretBytes)
        {
            throw new ArgumentException("A secret has 32 bytes.", nameof(secret));
        }

        _secret = secret;
        Word = string.Join(
            '-', Derived("address").Take(WordLetters).Select(b => Letters[b % Letters.Length]).Chunk(Together).Select(c => new string(c)));
        Cookie = Convert.ToHexStringLower(Derived("cookie"));
        _word = Hash(Plain(Word));
        _cookie = Hash(Cookie);
    }

    /// <summary>A hundred bits in four groups of letters.</summary>
    public string Word { get; }

    /// <summary>What a browser keeps.</summary>
    public string Cookie { get; }

    public static PageKey New() => new(RandomNumberGenerator.GetBytes(SecretBytes));

    /// <summary>Cookies know hosts and no ports: another worktable on this computer has one of its own.</summary>
    public static string CookieName(int port) => FormattableString.Invariant($"nameband-{port}");

    public string AddressAt(string url) => url.TrimEnd('/') + Way + Word;

    public byte[] ToBytes() => [.. _secret];

    /// <summary>Whether it is the word; the time it takes says nothing.</summary>
    public bool Opens(string word) => CryptographicOperations.FixedTimeEquals(Hash(Plain(word)), _word);

    /// <summary>Whether one of a request's cookies is ours: another server of this computer may have set others of the same name.</summary>
    public bool IsHeldBy(HttpRequest request, int port)
    {
        bool isHeld = false;
        if (CookieHeaderValue.TryParseList(request.Headers.Cookie, out var given))
        {
            foreach (var cookie in given.Where(c => c.Name.Equals(CookieName(port), StringComparison.Ordinal)))
            {
                isHeld |= CryptographicOperations.FixedTimeEquals(Hash(cookie.Value.ToString()), _cookie);
            }
        }

        return isHeld;
    }

    private static string Plain(string word) => word.Replace("-", "", StringComparison.Ordinal).ToLowerInvariant();

    private static byte[] Hash(string text) => SHA256.HashData(Encoding.UTF8.GetBytes(text));

    private byte[] Derived(string what) => HMACSHA256.HashData(_secret, Encoding.UTF8.GetBytes(string.Join(' ', "nameband", "page", what)));
}
