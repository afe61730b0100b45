using System.Globalization;
using NameBand.Benchmarks;
using NameBand.Tests.Hostile;

return args switch
{
    ["stitches", .. var rest] => StitchTable.Run(rest),
    ["sheets", var project, var folder, var ending] => ContactSheets.Run(project, folder, ending, 6),
    ["sheets", var project, var folder, var ending, var scale] =>
        ContactSheets.Run(project, folder, ending, float.Parse(scale, CultureInfo.InvariantCulture)),
    ["names", .. var rest] => NameTable.Run(rest),
    ["warm"] => WarmStitching.Run(),
    ["pull"] => PullFigures.Run(),
    ["stages"] => StitchStages.Run(),
    ["triangles"] => TriangulationFigures.Run(),
    ["warm", "letters"] => WarmStitching.RunCold(),
    ["warm", "joined"] => WarmStitching.RunJoined(),
    ["proofs", .. var rest] => ProofFigures.Run(rest),
    ["layout"] => LayoutFigures.Run(),
    ["whole", .. var rest] => WholeJob.Run(rest),
    ["packet", .. var rest] => PacketFigures.Run(rest),
    ["hostile", .. var rest] => HostileRun.Run(rest),
    ["hostile-child", var kind, var first, var count] =>
        HostileRun.Child(kind, int.Parse(first, CultureInfo.InvariantCulture), int.Parse(count, CultureInfo.InvariantCulture)),
    ["hostile-input", var kind, var seed, var file] => HostileRun.Keep(kind, int.Parse(seed, CultureInfo.InvariantCulture), file),
    ["fuzz", .. var rest] => FuzzRun.Run(rest),
    [FuzzRun.Child, var kind] => FuzzRun.Try(kind),
    ["faults", .. var rest] => FaultRun.Run(rest),
    ["kills", .. var rest] => KillRun.Run(rest),
    ["cuts", .. var rest] => CutRun.Run(rest),
    [KilledWork.Verb, var folder, var seed] => Child(folder, seed),
    ["replan", .. var rest] => Replanning.Run(rest),
    ["flush"] => FlushFigures.Run(),
    ["letter-metrics", var project, var packages] => LetterFaces.Metrics(project, packages),
    ["letter-prior", var project] => LetterFaces.MakePrior(project),
    ["letter-own"] => OwnWays.Run(),
    ["letter-widths", .. var rest] => WidthFigures.Run(rest),
    ["public", .. var rest] => PublicFigures.Run(rest),
    ["banner", .. var rest] => BannerRun.Run(rest),
    _ => Usage(),
};

static int Child(string folder, string seed)
{
    KilledWork.Run(folder, int.Parse(seed, CultureInfo.InvariantCulture));
    return 0;
}

static int Usage()
{
    Console.Error.WriteLine("Benchmarks: stitches [--height MM]… [--letters TEXT] [--brief | --flow] [--pictures DIR] FONTFILE…");
    Console.Error.WriteLine("            sheets PROJECT FOLDER ENDING [PIXELS A MM]");
    Console.Error.WriteLine("            names [--height MM]… [--names NAME,…] [--pictures DIR [--scale PIXELS A MM]] [FACE FOLDER]…");
    Console.Error.WriteLine("            warm [letters | joined]");
    Console.Error.WriteLine("            stages");
    Console.Error.WriteLine("            triangles");
    Console.Error.WriteLine("            pull");
    Console.Error.WriteLine("            proofs JOB FONTFILE [--pictures DIR]");
    Console.Error.WriteLine("            layout");
    Console.Error.WriteLine("            whole [PROJECT FOLDER]");
    Console.Error.WriteLine("            packet");
    Console.Error.WriteLine("            hostile [INPUTS [FIRST SEED [KIND]]]");
    Console.Error.WriteLine("            hostile-input KIND SEED FILE");
    Console.Error.WriteLine("            fuzz [MINUTES [KIND]…]");
    Console.Error.WriteLine("            faults [OF EACH ROOM [SEED [SECONDS [ROOM]…]]]");
    Console.Error.WriteLine("            kills [KILLS [SEED]]");
    Console.Error.WriteLine("            cuts [CUTS [FIRST SEED [DEED]…]]");
    Console.Error.WriteLine("            replan [NAMES]");
    Console.Error.WriteLine("            flush");
    Console.Error.WriteLine("            letter-metrics PROJECT PACKAGES");
    Console.Error.WriteLine("            letter-prior PROJECT");
    Console.Error.WriteLine("            letter-own");
    Console.Error.WriteLine("            letter-widths [MACHINES [folds|splits] [known|picked|unknown|blanks|feed]…]");
    Console.Error.WriteLine("            public [NAMES]…");
    Console.Error.WriteLine("            banner [PROJECT FOLDER [SEED]]");
    return 64;
}
