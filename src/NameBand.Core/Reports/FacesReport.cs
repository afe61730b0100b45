using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering.Smallness;

namespace NameBand.Reports;

/// <summary>The faces that travel with the program, measured; a damaged one is left out and told of in a problem.</summary>
public sealed record FacesReport(ExitStatus Status, ImmutableArray<FaceReport> Faces, ImmutableArray<Problem> Problems);
