namespace NameBand.Job;

/// <summary>The ways without a file.</summary>
internal static partial class JobAssembly
{
    private static LettersSettings Letters(string folder, JobValues values, WayTraits traits, Holding holding) => new(
        JobPaths.CheckAlphabet(folder, values),
        values.Lengths(LettersKeys.Sizes), values.Lengths(LettersKeys.Spacings), values.Length(LettersKeys.Gap),
        values.Text(LettersKeys.Has)!,
        (int?)values.Number(LettersKeys.Holds), values.Flag(LettersKeys.KeepsLeadingBlanks), values.Flag(LettersKeys.ForgetsWhenOff),
        values.Word(LettersKeys.Feed), values.Word(LettersKeys.Tops), values.Flag(LettersKeys.Mirrored),
        traits.HasLettersOfItsOwn && !traits.FollowsCoordinates ? holding.IsHooped : values.Flag(LettersKeys.Hooped),
        values.Certain(LettersKeys.ReadingError), values.Number(LettersKeys.SecondsPerKey)!.Value,
        values.Number(LettersKeys.PositioningMinutes)!.Value)
    {
        Look = values.Word(LettersKeys.Look),
        Stroke = values.Length(LettersKeys.Stroke),
        MarksByHand = values.Word(LettersKeys.Lacking),
        FeedVariationPart = Certain(values, LettersKeys.FeedVariation),
    };

    private static TracedSettings Traced(JobValues values) => new(
        values.Flag(LettersKeys.TracedMirrored), values.Word(LettersKeys.TracedSewn), values.Word(LettersKeys.TracedFollow),
        values.Number(LettersKeys.TracedPace));
}
