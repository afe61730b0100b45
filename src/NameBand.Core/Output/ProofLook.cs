using NameBand.Cloth;
using NameBand.Output.Drawing;

namespace NameBand.Output;

/// <summary>How a proof is drawn.</summary>
/// <param name="Face">Of its captions.</param>
/// <param name="ThreadMm">Width at which the thread is drawn.</param>
/// <param name="SewnBeforeCutting">Whether the names are sewn on wider cloth that is trimmed afterwards.</param>
internal sealed record ProofLook(CaptionFace Face, double ThreadMm = SewingThread.FortyWeightMm, bool SewnBeforeCutting = true)
{
    /// <summary>How much of a wide picture is held at once; null: as much as is good.</summary>
    internal int? MostPixelsAtOnce { get; init; }
}
