namespace NameBand.Tests.Hostile;

/// <summary>What a disk may do with what it has not confirmed.</summary>
internal enum CutKind
{
    /// <summary>It is all lost.</summary>
    OnlyConfirmed,

    /// <summary>Names are kept up to some moment, data by chance.</summary>
    NamesInOrder,

    /// <summary>All names are there, and no data.</summary>
    NamesWithoutData,

    /// <summary>Names of one folder may be kept and earlier ones of another lost.</summary>
    AnyOrder,
}
