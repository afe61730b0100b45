using System.Globalization;
using System.Runtime.ExceptionServices;
using System.Text;
using NameBand.Common;

namespace NameBand.Output.Sheets;

/// <summary>
/// Lets a PDF pass through to a stream and, once it is whole, adds what its writer has no way to say: the document's
/// language, that its title is shown, and that it is printed at its own size. Done as ISO 32000-1, 7.5.6 has it, by an
/// update at the end that replaces the catalogue alone, so nothing is kept but the last part of what went by. A disk that
/// refuses is told by <see cref="Finish"/>: an exception must not pass through the native code that writes here.
/// </summary>
internal sealed class PdfStream(Stream inner) : Stream
{
    private readonly string _language = Language.Now?.Culture.Name ?? "en";

    private const string Mark = "/Type /Catalog";
    private const string Title = "/DisplayDocTitle";
    private const string Wish = Title + " true";
    private const string AtOwnSize = "\n/PrintScaling /None";
    private const int KeptBytes = 4096; // Of what went by last: the trailer, and the catalogue as it goes by, are far shorter.

    private readonly byte[] _recent = new byte[KeptBytes];
    private int _recentLength;
    private long _written;
    private string? _catalogue;
    private ExceptionDispatchInfo? _refusal;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => _written;

    public override long Position { get => _written; set => throw new NotSupportedException(); }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        Pass(buffer);
        _written += buffer.Length;
        while (!buffer.IsEmpty)
        {
            int take = Math.Min(buffer.Length, KeptBytes / 2);
            Keep(buffer[..take]);
            FindCatalogue();
            buffer = buffer[take..];
        }
    }

    public override void Flush()
    {
    }

    /// <summary>Writes the update; to be called once, after the document is closed.</summary>
    /// <exception cref="IOException">The disk refused some part of it.</exception>
    /// <exception cref="InvalidOperationException">What went by was no PDF: a bug.</exception>
    public void Finish()
    {
        _refusal?.Throw();
        string tail = Encoding.Latin1.GetString(_recent, 0, _recentLength);
        string trailer = Between(tail, "trailer", "startxref");
        string earlier = Between(tail, "startxref", "%%EOF").Trim();
        if (_catalogue is null)
        {
            throw new InvalidOperationException("The PDF has no catalogue.");
        }

        int number = int.Parse(_catalogue.AsSpan(0, _catalogue.IndexOf(' ', StringComparison.Ordinal)), CultureInfo.InvariantCulture);
        long at = _written + 1;
        bool hasWishes = _catalogue.Contains(Wish, StringComparison.Ordinal);
        string added = "\n/Lang (" + _language + ")" + (hasWishes ? "" : $"\n/ViewerPreferences <<{Wish}{AtOwnSize}>>");
        string replaced = "\n" + _catalogue.Replace(Mark, Mark + added, StringComparison.Ordinal) + "\n";
        replaced = hasWishes ? replaced.Replace(Wish, Wish + AtOwnSize, StringComparison.Ordinal) : replaced;
        long table = at - 1 + replaced.Length;
        string update = string.Create(
            CultureInfo.InvariantCulture,
            $"{replaced}xref\n{number} 1\n{at:D10} 00000 n \ntrailer\n{trailer.Trim().Replace("<<", $"<</Prev {earlier}\n", StringComparison.Ordinal)}\nstartxref\n{table}\n%%EOF\n");
        inner.Write(Encoding.Latin1.GetBytes(update));
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private void Pass(ReadOnlySpan<byte> bytes)
    {
        if (_refusal is not null)
        {
            return;
        }

        try
        {
            inner.Write(bytes);
        }
        catch (Exception e)
        {
            _refusal = ExceptionDispatchInfo.Capture(e);
        }
    }

    private void Keep(ReadOnlySpan<byte> bytes)
    {
        int drop = Math.Max(0, _recentLength + bytes.Length - KeptBytes);
        _recent.AsSpan(drop, _recentLength - drop).CopyTo(_recent);
        _recentLength -= drop;
        bytes.CopyTo(_recent.AsSpan(_recentLength));
        _recentLength += bytes.Length;
    }

    private void FindCatalogue()
    {
        if (_catalogue is not null || _recent.AsSpan(0, _recentLength).IndexOf(Encoding.Latin1.GetBytes(Mark)) < 0)
        {
            return;
        }

        string recent = Encoding.Latin1.GetString(_recent, 0, _recentLength);
        int mark = recent.IndexOf(Mark, StringComparison.Ordinal);
        int end = recent.IndexOf("endobj", mark, StringComparison.Ordinal);
        int start = recent.LastIndexOf(" 0 obj", mark, StringComparison.Ordinal);
        if (end < 0 || start < 0)
        {
            return;
        }

        int line = recent.LastIndexOf('\n', start) + 1;
        _catalogue = recent[line..(end + "endobj".Length)];
    }

    private static string Between(string text, string from, string to)
    {
        int start = text.LastIndexOf(from, StringComparison.Ordinal);
        int end = start < 0 ? -1 : text.IndexOf(to, start, StringComparison.Ordinal);
        return end < 0 ? throw new InvalidOperationException("The PDF has no end.") : text[(start + from.Length)..end];
    }
}
