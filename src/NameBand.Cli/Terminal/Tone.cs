namespace NameBand.Cli.Terminal;

/// <summary>What a line of text is about; shown as colour or weight where the outlet has any.</summary>
internal enum Tone
{
    Plain,
    Heading,
    Quiet,
    Good,
    GoodHeading,
    Attention,
    AttentionHeading,
    Bad,
    BadHeading,
}
