using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout;

/// <summary>The colours that a plan is sewn in.</summary>
public sealed record PlanColours(ColourSettings Job, GroupSettings Groups)
{
    public static PlanColours Usual { get; } = new(new ColourSettings(), GroupSettings.None);

    public CssColour? Cloth => Job.Cloth;

    /// <summary>Null where neither its group nor the job says.</summary>
    public CssColour? OfThread(PlacedName name) => Groups.Of(name.Lettered.Name.Group)?.Thread ?? Job.Thread;
}
