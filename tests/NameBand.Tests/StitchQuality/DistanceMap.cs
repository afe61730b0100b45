namespace NameBand.Tests.StitchQuality;

/// <summary>
/// Exact distance of a cell from the nearest cell of a set: from each cell along its column, once for all; then along the row
/// of the cell that is asked for, as far as a nearer one can lie.
/// </summary>
internal sealed class DistanceMap
{
    /// <summary>Further than any cell of a grid, and its square is an int.</summary>
    private const int Far = 40_000;

    private readonly int _width;
    private readonly int[] _along;

    /// <param name="width">Cells in a row.</param>
    /// <param name="height">Cells in a column.</param>
    /// <param name="isSource">Whether a cell, counted row by row, is of the set.</param>
    public DistanceMap(int width, int height, Func<int, bool> isSource)
    {
        _width = width;
        _along = new int[width * height];
        for (int i = 0; i < _along.Length; i++)
        {
            _along[i] = isSource(i) ? 0 : i < width ? Far : Math.Min(Far, _along[i - width] + 1);
        }

        for (int i = _along.Length - width - 1; i >= 0; i--)
        {
            _along[i] = Math.Min(_along[i], _along[i + width] + 1);
        }
    }

    /// <summary>Squared distance in cells from a cell to the nearest of the set; where there is none, the square of
    /// <see cref="Far"/>.</summary>
    public int Squared(int cell)
    {
        int column = cell % _width;
        int least = _along[cell] * _along[cell];
        for (int aside = 1; aside * aside < least && aside < _width; aside++)
        {
            int left = column - aside >= 0 ? _along[cell - aside] : Far;
            int right = column + aside < _width ? _along[cell + aside] : Far;
            int along = Math.Min(left, right);
            least = along == Far ? least : Math.Min(least, (along * along) + (aside * aside));
        }

        return least;
    }
}
