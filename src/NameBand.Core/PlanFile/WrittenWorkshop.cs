namespace NameBand.PlanFile;

/// <summary>The values of the workshop that were used, wherever they were written.</summary>
internal sealed record WrittenWorkshop
{
    /// <summary>Not said where there is no workshop.json, and what is usual was assumed.</summary>
    public string? File { get; init; }

    /// <summary>Not said where nothing is known of the machine, as are the members below that lack.</summary>
    public string? Machine { get; init; }

    public required double StitchesPerMinute { get; init; }

    public bool? CutsThread { get; init; }

    /// <summary>Whether she sits by it.</summary>
    public required bool Watched { get; init; }

    /// <summary>Not said where nothing is hooped.</summary>
    public WrittenFrame? Frame { get; init; }

    public double? EveningMinutes { get; init; }
}

/// <summary>The field that was laid out for.</summary>
internal sealed record WrittenFrame
{
    /// <summary>Not said where job.json gives the field itself, or it is assumed.</summary>
    public string? Name { get; init; }

    public required decimal AlongMm { get; init; }

    public required decimal AcrossMm { get; init; }

    /// <summary><c>screw</c>, <c>clamp</c>, <c>magnet</c>, <c>laid</c> or <c>none</c>.</summary>
    public string? Hold { get; init; }

    /// <summary>Of placing the cloth in it, once.</summary>
    public required double Minutes { get; init; }
}

/// <summary>Choices that cost only work; a member lacks where the job makes it.</summary>
internal sealed record WrittenFree
{
    /// <summary>Strips that may lie side by side.</summary>
    public int? Lanes { get; init; }

    public string? Frame { get; init; }

    /// <summary>How hoopings are set in place.</summary>
    public string? Marks { get; init; }
}
