namespace NameBand.Common;

/// <summary>What can be done to a disk.</summary>
internal enum DiskAct
{
    MakeFolder,

    /// <summary>A file is opened to be written, and made where there is none.</summary>
    Open,

    /// <summary>The same, and what was in it is gone.</summary>
    Renew,
    Write,

    /// <summary>A file gets another length.</summary>
    Resize,

    /// <summary>The disk is asked to confirm a file.</summary>
    FlushFile,

    /// <summary>The disk is asked to confirm a folder's list of names.</summary>
    FlushFolder,

    /// <summary>The disk is asked to confirm a folder with all that lies in it.</summary>
    FlushTree,

    /// <summary>Another name; what bore it before is gone.</summary>
    Move,
    Exchange,

    /// <summary>A second name for a file.</summary>
    Link,
    Copy,

    /// <summary>A file or an empty folder goes.</summary>
    Remove,
    RemoveTree,
}

/// <summary>One thing done to a disk.</summary>
/// <param name="To">The other name, where there are two.</param>
internal sealed record DiskDeed(DiskAct Act, string Path, string To = "")
{
    /// <summary>Where in the file it was written, or how long the file is to be.</summary>
    public long At { get; init; }

    /// <summary>What was written.</summary>
    public ReadOnlyMemory<byte> Bytes { get; init; }
}

/// <summary>Sees all that is done to the disk: how tests keep a disk of their own, and refuse what a disk may refuse.</summary>
internal interface IDiskWitness
{
    /// <exception cref="IOException">The deed is refused, and not done.</exception>
    void Before(DiskDeed deed);

    void After(DiskDeed deed);

    /// <summary>Instead of waiting before another try.</summary>
    void Wait(TimeSpan pause);
}
