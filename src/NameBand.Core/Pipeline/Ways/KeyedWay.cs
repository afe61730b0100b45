using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.Names;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Ways;

/// <summary>Names are keyed into the machine's own letters.</summary>
/// <param name="way">That its names go.</param>
internal sealed class KeyedWay(Way way) : IWay
{
    public Problem? NoSwatch { get; } = Problem.CannotUse(
        new Where(JobReader.FileName, Key: "way"),
        "A swatch is a needle path, and these names are keyed into the machine's own letters.",
        "The lines of the command measure are your swatch: rule two crosses 100 mm apart on the cloth before you sew one between them."
        + " Press it, measure from cross to cross and how long the name came out, and say both: swatch JOB --measured 99.2 --under 62.");

    /// <summary>Sorts the names by what the machine can sew, and finds how wide its letters are.</summary>
    public Result<NamesRead> Letter(CheckedList checkedList, FaceShelf shelf, CancellationToken cancel)
    {
        var (job, face, list) = (checkedList.Job, checkedList.Face, checkedList.InOrder);
        var file = Read(checkedList);
        if (file is { IsUsable: false })
        {
            return Result.Fail<NamesRead>(file.Problems);
        }

        var found = KeyedMeasures.Read(job, file?.Value);
        if (found.Value is not { } knowledge)
        {
            return Result.Fail<NamesRead>([.. file?.Problems ?? [], .. found.Problems]);
        }

        var has = MachineSpelling.Has(job.Letters, file?.Value);
        var isByHand = IsByHand(checkedList);
        var spelled = MachineSpelling.Check(list, checkedList.Corrections, has, isByHand, OtherWay(job));
        var (names, groups, heldHeadings) = InGroups(checkedList, spelled.Names, has, isByHand);
        if (groups?.Sizes.NoneHas(job.Lettering.Height?.Mm) is { } noHeight)
        {
            return Result.Fail<NamesRead>(noHeight);
        }

        var motif = MachineMotif.Of(job, knowledge, has);
        string[] texts =
            [.. names.Select(n => n.Text), .. checkedList.Matched?.Gone.Select(g => g.Text) ?? [], .. motif.Value?.Drawn ?? []];
        string[] letters = [.. texts.SelectMany(knowledge.Keys.Of).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var shapes = LikenessFace.Shapes(job, [.. letters.Concat(texts.SelectMany(Letters.Of))], face, shelf, knowledge);
        var (begun, matched) = (checkedList.Begun, checkedList.Matched);
        var gone = matched is null ? [] : NeedlePathWay.GoneOf(checkedList, matched, t => t.HasLettersOfItsOwn).ToImmutableArray();
        var steps = SizeSteps.Of(job.Letters, knowledge, letters);
        var toMeasure = KeyedMeasures.ToMeasure(
            knowledge, [.. names.Where(n => groups?.Sizes.FactorOf(n, steps[0].HeightMm) is null or 1)], steps[0]);
        var known = new KeyedLetters(way, knowledge, shapes, names) { ToMeasure = toMeasure, Groups = groups, Motif = motif.Value };
        var first = known.Letter(steps[0]);
        var read = new NamesRead(
            job, checkedList.Corrections, face, first with { Held = spelled.Held }, HeldRows.OfLetters(
                list, spelled.Held,
                names => first with { Held = MachineSpelling.Check(names, checkedList.Corrections, has, isByHand).Held }),
            known)
        {
            Sewn = begun is null || matched is null ? null
                : (begun, known.GoOnFrom(
                    job, begun, matched,
                    known.Composed(gone, LargestSetting.At(steps, begun.Plan.LetterHeightMm).FirstOrDefault(steps[0])))),
            SewnThenChanged = matched?.Changed,
        };
        return Result.Of(
            read, [.. file?.Problems ?? [], .. found.Problems, .. Together(spelled), .. spelled.Problems, .. heldHeadings,
            .. motif.Problems, .. KeyedDrift.NotSaidToBeSewn(job, list, begun?.Log, begun?.Plan, knowledge.OnStrip)]);
    }

    public Face? LooksLike(CheckedList list, FaceShelf shelf)
    {
        var file = Read(list);
        return file is { IsUsable: false } || KeyedMeasures.Read(list.Job, file?.Value).Value is not { } knowledge ? null
            : LikenessFace.Nearest(
                list.Job, [.. list.InOrder.Names.SelectMany(n => Letters.Of(n.Text)).Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)], list.Face, shelf, knowledge);
    }

    /// <summary>Names in the order of their groups, headings among them; without groups as they are.</summary>
    private static (ImmutableArray<Name> Names, (GroupOrder Order, GroupSizes Sizes)? Groups, IEnumerable<Problem> Held) InGroups(
        CheckedList list, ImmutableArray<Name> names, Func<string, bool> has, Func<RowRef, bool> isByHand)
    {
        var job = list.Job;
        if (job.Groups.All.IsEmpty && names.All(n => n.Wish is not { IsOfLetters: true }))
        {
            return (names, null, []);
        }

        var wished = GroupOrder.Headings(job.Groups, list.InOrder.Names);
        var headings = MachineSpelling.Check(new NameList([], wished), list.Corrections, has, isByHand);
        var order = new GroupOrder(job.Groups, _ => null, null);
        return (
            order.Ordered([.. headings.Names, .. names]),
            (order, new GroupSizes(job.Letters, job.Groups, list.InOrder.Names)),
            headings.Held.Select(h => GroupOrder.HeldHeading(wished.First(w => w.Row == h.Row).Text, h)));
    }

    /// <summary>Names all of whose letters the machine has and that were measured: beside another way nothing is guessed.</summary>
    public Result<ImmutableHashSet<RowRef>> Able(CheckedList checkedList, FaceShelf shelf, CancellationToken cancel)
    {
        var job = checkedList.Job;
        var file = Read(checkedList);
        if (file is { IsUsable: false })
        {
            return Result.Fail<ImmutableHashSet<RowRef>>(file.Problems);
        }

        if (file?.Value is not { } measured)
        {
            var found = KeyedMeasures.Read(job, null);
            if (found.Value is { IsMeasured: true })
            {
                return Result.Of(Sewable(checkedList, MachineSpelling.Has(job.Letters, null)));
            }

            if (found.Value is null)
            {
                return Result.Fail<ImmutableHashSet<RowRef>>(found.Problems);
            }

            return Result.Of<ImmutableHashSet<RowRef>>([], [Problem.NeedsPerson(
                new Where(job.Letters.Alphabet),
                "The machine’s letters are not measured yet, so no name is keyed in: beside another way only measured letters are.",
                $"Sew three of the names on a scrap and write their lengths into {SewnLengths.FileName}: name,measured_mm,sewn_on.")]);
        }

        var has = MachineSpelling.Has(job.Letters, measured);
        bool Measured(string letter) =>
            has(letter) && measured.BySize.All(a => a.Letters.GetValueOrDefault(letter) is { Origin: WidthOrigin.Measured });
        return Result.Of(Sewable(checkedList, Measured));
    }

    /// <summary>Beside another way a name is keyed in with marks by hand only where she said so.</summary>
    private static ImmutableHashSet<RowRef> Sewable(CheckedList list, Func<string, bool> has) =>
        [.. MachineSpelling.Check(list.InOrder, list.Corrections, has, IsByHand(list)).Names.Select(n => n.Row)];

    /// <summary>What is sewn with marks by hand stays so.</summary>
    private static Func<RowRef, bool> IsByHand(CheckedList list)
    {
        var sewn = list is { Begun: { } begun, Matched: { } matched } ? begun.SewnRows(matched) : null;
        return row => list.Job.Letters.MarksByHand || sewn?.ContainsKey(row) == true;
    }

    /// <summary>A machine of hers that follows coordinates sews what its letters cannot; else it is traced.</summary>
    private static string OtherWay(BandJob job) => JobKeys.WordOf(
        job.Workshop.MachineFor(WayTraits.FromNeedlePaths) is not null ? WayTraits.FromNeedlePaths : WayTraits.ByHand);

    private static IEnumerable<Problem> Together(SpelledNames spelled) =>
        MachineSpelling.AllAtOnce(spelled.Held) is { } all ? [all] : [];

    private static Result<MeasuredAlphabets>? Read(CheckedList list)
    {
        var letters = list.Job.Letters;
        if (!InnerFile.IsThere(list.Job.Folder, letters.Alphabet))
        {
            return null;
        }

        var read = AlphabetFile.Read(list.Job.Folder, letters.Alphabet, letters.Sizes[0].Mm, letters.Gap?.Mm, 2 * letters.ReadingError.Mm);
        return read with { Problems = [.. read.Problems, .. KeyedMeasures.OtherHeights(letters, read.Value, list.Begun is not null)] };
    }
}
