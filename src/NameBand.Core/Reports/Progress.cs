namespace NameBand.Reports;

/// <summary>How far a long piece of work has come.</summary>
public readonly record struct Progress(string What, int Done, int Of);
