using System.Collections;

namespace NameBand.PlanFile;

/// <summary>
/// A list whose entries are made when they are asked for and not kept: a plan of tens of thousands of names is written entry by
/// entry, and never stands in memory a second time.
/// </summary>
internal sealed class Lazily<T>(int count, Func<int, T> make) : IReadOnlyList<T>
{
    public int Count => count;

    public T this[int index] => index >= 0 && index < count ? make(index) : throw new ArgumentOutOfRangeException(nameof(index));

    public IEnumerator<T> GetEnumerator()
    {
        for (int i = 0; i < count; i++)
        {
            yield return make(i);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
