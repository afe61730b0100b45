namespace NameBand.Layout;

/// <summary>What stops the letters from being larger.</summary>
public enum HeightBound
{
    /// <summary>The job names the height.</summary>
    Given,

    /// <summary>The tallest accents and deepest tails reach the edges of the sewing zone.</summary>
    SewingZone,

    /// <summary>The widest name fills the sewing field.</summary>
    SewingField,

    /// <summary>All names together fill the rounds.</summary>
    Rounds,

    /// <summary>There is no larger step: the top of the range was reached.</summary>
    None,
}
