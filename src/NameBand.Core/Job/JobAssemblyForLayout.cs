using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The part of a job that says how names are laid along the hem and strips on the cloth.</summary>
internal static partial class JobAssembly
{
    private const string Between = " at ";

    private static LayoutSettings Layout(JobValues values)
    {
        var layout = new LayoutSettings
        {
            KeepClear = KeepClear(values),
            Start = values.Certain(LayoutKeys.Start),
            CentreFront = values.Length(LayoutKeys.CentreFront),
            CentreBack = values.Length(LayoutKeys.CentreBack),
            LiesFlatPart = Certain(values, LayoutKeys.LiesFlat),
            EasedPart = values.Number(LayoutKeys.Eased),
            GivenEaseLimitPart = values.Number(LayoutKeys.EaseLimit),
            HasTucks = values.Flag(LayoutKeys.Tucks),
            MostGap = values.Length(LayoutKeys.MostGap),
            Lanes = values.Has(LayoutKeys.Lanes) ? (int?)values.Number(LayoutKeys.Lanes) : 1,
            AreLanesFree = !values.Has(LayoutKeys.Lanes),
            Lines = (int)(values.Number(LayoutKeys.Lines) ?? 1),
            IsBias = values.Word(LayoutKeys.Grain),
            IsJoinedDiagonally = values.Word(LayoutKeys.Join),
            JoinClear = values.Certain(LayoutKeys.JoinClear),
            ClosingBlank = values.Length(LayoutKeys.ClosingBlank),
            IsCurved = values.Word(LayoutKeys.Shape),
            Piece = values.Length(LayoutKeys.Piece),
            JoinAllowance = values.Certain(LayoutKeys.JoinAllowance),
            EndCloth = values.Certain(LayoutKeys.EndCloth),
        };
        if (layout.EasedPart < layout.LiesFlatPart && values.AreSound(LayoutKeys.Eased, LayoutKeys.LiesFlat))
        {
            values.Refuse(
                LayoutKeys.Eased, "strip.eased is less than strip.liesFlat.",
                "Make strip.eased the larger: what lies flat by itself need not be eased.");
        }

        var gap = values.Length(JobKeys.Gap);
        if (layout.MostGap is { } most && gap is { } least && most.Mm < least.Mm && values.AreSound(LayoutKeys.MostGap, JobKeys.Gap))
        {
            values.Refuse(LayoutKeys.MostGap, "lettering.mostGap is narrower than lettering.gap.", "Make it the wider of the two.");
        }

        return layout;
    }

    /// <summary>Texts such as "60 mm at 1.83 m": how wide, and where along the hem its middle lies.</summary>
    private static ImmutableArray<ClearPlace> KeepClear(JobValues values)
    {
        var places = ImmutableArray.CreateBuilder<ClearPlace>();
        foreach (string text in values.Texts(LayoutKeys.KeepClear))
        {
            int at = text.IndexOf(Between, StringComparison.Ordinal);
            if (at > 0 && Length.TryParse(text[..at], out var width, out _)
                && Length.TryParse(text[(at + Between.Length)..], out var middle, out _)
                && width.Mm > 0 && middle.Mm >= 0)
            {
                places.Add(new ClearPlace(middle, width));
                continue;
            }

            values.Refuse(
                LayoutKeys.KeepClear, $"“{PlainText.Short(text)}” does not say how wide a place is and where it lies.",
                "Write the width and the place along the hem, such as \"60 mm at 1.83 m\".");
        }

        return places.ToImmutable();
    }
}
