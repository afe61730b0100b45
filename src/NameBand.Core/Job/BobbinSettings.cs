namespace NameBand.Job;

/// <summary>
/// A bobbin by its outside measures, so that what it holds can be computed: a class 15 bobbin is 20.3 mm wide and
/// 11.7 mm high (a parts seller's table). Core, wall, thread and winding are common practice, no source.
/// </summary>
/// <param name="CapacityM">What the bobbin really holds, where it has been measured; null: computed.</param>
public sealed record BobbinSettings(
    double DiameterMm = 20.3, double HeightMm = 11.7, double CoreMm = 6.5, double WallMm = 0.9, double FilledToMm = 19,
    double ThreadTex = 16, double WindingPart = 0.65, double? CapacityM = null)
{
    /// <summary>Room that a gram of filament thread takes as a round thread, in cubic centimetres: common practice, no source.</summary>
    public const double Cm3PerGram = 1.1;

    /// <summary>Part of a bobbin that is left on it when it is changed, because its end slips off the core unasked.</summary>
    public const double LeftOnPart = 0.03;

    /// <summary>Diameter in mm of the round thread of this linear density: tex is grams per kilometre.</summary>
    public double ThreadDiameterMm => Math.Sqrt(4 * ThreadTex / 1000 * Cm3PerGram / Math.PI);

    /// <summary>Metres on a full bobbin: the room between the walls, as densely wound as <see cref="WindingPart"/> says, over the
    /// thread's section.</summary>
    public double HoldsM => CapacityM ?? ComputedM;

    /// <summary>Metres that can be counted on before the bobbin is changed.</summary>
    public double UsableM => HoldsM * (1 - LeftOnPart);

    private double ComputedM
    {
        get
        {
            double room = Math.PI / 4 * ((FilledToMm * FilledToMm) - (CoreMm * CoreMm)) * (HeightMm - (2 * WallMm));
            double section = Math.PI / 4 * ThreadDiameterMm * ThreadDiameterMm;
            return room * WindingPart / section / 1000;
        }
    }
}
