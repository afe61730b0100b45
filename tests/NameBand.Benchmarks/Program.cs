using NameBand.Benchmarks;

return args switch
{
    ["stitches", .. var rest] => StitchTable.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Benchmarks: stitches [--height MM]… [--letters TEXT] [--pictures DIR] FONTFILE…");
    return 64;
}
