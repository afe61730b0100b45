namespace NameBand.Job;

/// <summary>What a machine's letters look like, as she picks it from pictures.</summary>
public enum LetterLook
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>Plain, without feet at the strokes' ends.</summary>
    Sans,

    /// <summary>With feet, strokes thick and thin.</summary>
    Serif,

    /// <summary>With feet as thick as the strokes.</summary>
    Slab,

    /// <summary>Like handwriting, joined or slanting.</summary>
    Script,

    /// <summary>All letters equally wide, as on a typewriter.</summary>
    Monospaced,
}
