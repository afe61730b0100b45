namespace NameBand.Common;

/// <summary>Why a length could not be read.</summary>
/// <param name="Found">What stands there and what is wrong with it: a whole sentence.</param>
/// <param name="Mend">What to write instead: a whole sentence.</param>
internal readonly record struct LengthFault(Said Found, Said Mend);
