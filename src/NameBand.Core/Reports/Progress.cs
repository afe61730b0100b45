using NameBand.Common;

namespace NameBand.Reports;

/// <summary>How far a long piece of work has come.</summary>
public readonly record struct Progress(Said What, int Done, int Of);
