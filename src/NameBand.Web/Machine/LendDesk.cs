using System.Security.Cryptography;
using System.Text;
using NameBand.Web.Table;

namespace NameBand.Web.Machine;

/// <summary>
/// Lends the view at the machine to another screen: a code that is shown on the maker's own screen, good for one screen, a
/// few tries and a few minutes, is exchanged for a token that only that screen has. Safe to use from several threads.
/// </summary>
public sealed class LendDesk : IDisposable
{
    /// <summary>Wrong codes that one code bears: with eight digits a stranger guesses it once in twenty million times.</summary>
    public const int MostTries = 5;

    /// <summary>Wrong codes that are heard from one sender: nobody on the network uses a code up for all others.</summary>
    public const int MostTriesOfOne = 3;

    /// <summary>Screens that it is lent to at once; the one that has had it longest goes first.</summary>
    public const int MostScreens = 200;

    /// <summary>How long a code holds.</summary>
    public static readonly TimeSpan Holding = TimeSpan.FromMinutes(10);

    private const int Digits = 8; // A hundred million codes against a few tries, and still typed at one go from screen to screen.

    private readonly Hearers _hearers = new();
    private readonly Lock _lock = new();
    private readonly List<byte[]> _lent = [];

    /// <summary>Wrong codes of each sender since the code was made: never more senders than a code bears tries.</summary>
    private readonly Dictionary<string, int> _wrongOf = new(StringComparer.Ordinal);
    private readonly TimeProvider _time;
    private readonly ITimer _end;
    private string? _code;
    private DateTimeOffset _until;
    private int _tries;

    public LendDesk(TimeProvider time)
    {
        _time = time;
        _end = time.CreateTimer(_ => _hearers.Tell(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Where the lent view answers; null: it is not lent.</summary>
    public string? Url { get; internal set; }

    /// <summary>The code that a further screen has to give, eight digits; null once it was used, tried in vain too often, or is
    /// too old.</summary>
    public string? Code
    {
        get
        {
            lock (_lock)
            {
                return HeldCode;
            }
        }
    }

    /// <summary>How many screens it is lent to.</summary>
    public int ScreenCount
    {
        get
        {
            lock (_lock)
            {
                return _lent.Count;
            }
        }
    }

    /// <summary>Told when a code was used up, tried in vain or has become too old, from any thread.</summary>
    public event Action? Changed
    {
        add => _hearers.Add(value);
        remove => _hearers.Remove(value);
    }

    public void MakeCode()
    {
        lock (_lock)
        {
            _code = RandomNumberGenerator.GetString("0123456789", Digits);
            _tries = MostTries;
            _wrongOf.Clear();
            _until = _time.GetUtcNow() + Holding;
        }

        _end.Change(Holding, Timeout.InfiniteTimeSpan);

        _hearers.Tell();
    }

    /// <summary>No screen that it was lent to is answered any longer, and no code holds.</summary>
    public void TakeBack()
    {
        lock (_lock)
        {
            _lent.Clear();
            _code = null;
        }

        _hearers.Tell();
    }

    /// <summary>Whether a sender has given so many wrong codes that it is not heard until there is a new one.</summary>
    internal bool IsDeafTo(string sender)
    {
        lock (_lock)
        {
            return _wrongOf.GetValueOrDefault(sender) >= MostTriesOfOne;
        }
    }

    /// <summary>A token for the code, which is used up by it; null: the code is wrong, there is none, or the sender is not heard.</summary>
    internal string? Exchange(string given, string sender)
    {
        string? token = null;
        lock (_lock)
        {
            if (HeldCode is not { } code || _wrongOf.GetValueOrDefault(sender) >= MostTriesOfOne)
            {
                return null;
            }

            if (CryptographicOperations.FixedTimeEquals(Hash(string.Concat(given.Where(char.IsAsciiDigit))), Hash(code)))
            {
                token = Convert.ToHexString(RandomNumberGenerator.GetBytes(32));
                _lent.Add(Hash(token));
                _lent.RemoveRange(0, Math.Max(0, _lent.Count - MostScreens));
                _code = null;
            }
            else
            {
                _wrongOf[sender] = _wrongOf.GetValueOrDefault(sender) + 1;
                _code = --_tries <= 0 ? null : code;
            }
        }

        _hearers.Tell();
        return token;
    }

    internal bool Holds(string? token)
    {
        if (token is null)
        {
            return false;
        }

        byte[] hash = Hash(token);
        lock (_lock)
        {
            bool holds = false;
            foreach (byte[] lent in _lent)
            {
                holds |= CryptographicOperations.FixedTimeEquals(lent, hash);
            }

            return holds;
        }
    }

    public void Dispose() => _end.Dispose();

    private string? HeldCode => _time.GetUtcNow() < _until ? _code : null;

    private static byte[] Hash(string text) => SHA256.HashData(Encoding.UTF8.GetBytes(text));
}
