using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;

namespace NameBand.MachineLetters;

/// <summary>
/// Which of a machine's heights the letters of each group have. A machine has no others, so a group gets the one that is nearest to what
/// its factor asks for.
/// </summary>
internal sealed class GroupSizes
{
    /// <summary>A height farther from the one that is asked for is not what she meant: our assumption.</summary>
    private const double MostOffFactor = 1.15;

    /// <summary>What is read back from a plan, and what is the same height to the eye.</summary>
    private const double SameMm = 0.05;

    private readonly ImmutableArray<double> _heightsMm;
    private readonly ImmutableArray<NameGroup> _groups;
    private readonly ImmutableArray<Name> _own;

    /// <param name="names">Only groups that have names are asked after.</param>
    public GroupSizes(LettersSettings letters, GroupSettings groups, IEnumerable<Name> names)
    {
        var met = names.Select(n => n.Group).ToHashSet();
        _heightsMm = [.. letters.Sizes.Select(s => s.Mm).Distinct().OrderDescending()];
        _own = [.. names.Where(n => n.Wish is { HeightFactor: not 1 })];
        _groups = [.. groups.All.Where(g => g.HeightFactor != 1 && met.Contains(g.Name))];
    }

    /// <summary>How many times as high as the others a group's letters are where those have a height.</summary>
    public double FactorOf(string? group, double heightMm) =>
        _groups.FirstOrDefault(g => g.Name == group) is { } known ? Nearest(known, heightMm) / heightMm : 1;

    /// <summary>The same of a name: the nearest height to what is wished for it alone.</summary>
    public double FactorOf(Name name, double heightMm) => name.Wish is { HeightFactor: not 1 and var own }
        ? Nearest(heightMm * own * (_groups.FirstOrDefault(g => g.Name == name.Group)?.HeightFactor ?? 1)) / heightMm
        : FactorOf(name.Group, heightMm);

    /// <summary>Whether the machine has a height for every group beside letters of that one.</summary>
    public bool Has(double heightMm) => _groups.All(g => IsNear(g, heightMm));

    /// <summary>Why no height will do; null where one does.</summary>
    /// <param name="asked">The height that the job names; null: any.</param>
    public Problem? NoneHas(double? asked)
    {
        double[] main = asked is { } one ? [.. _heightsMm.Where(h => Math.Abs(h - one) < SameMm)] : [.. _heightsMm];
        if (main.Length == 0 || main.Any(Has))
        {
            return null;
        }

        var group = _groups.First(g => !main.Any(h => IsNear(g, h)) || g == _groups[^1]);
        string name = PlainText.Short(group.Name);
        Said wishes =
            Wording.List([.. main.Select(h => (Said)$"{h * group.HeightFactor:0.#} mm beside {h:0.##} mm")]);
        var pairs = main.SelectMany(h => _heightsMm.Where(o => Math.Abs(o - h) > SameMm).Select(o => (Height: h, Own: o)))
            .OrderBy(p => Math.Abs(Math.Log(p.Own / p.Height / group.HeightFactor))).ToList();
        Said mend = pairs.Count == 0 ? "Add the heights that the machine has to letters.sizes, or take heightFactor out of the group."
            : (Said)$"Write \"heightFactor\": {pairs[0].Own / pairs[0].Height:0.##} ({pairs[0].Own:0.##} mm beside {pairs[0].Height:0.##} mm), or add the height to letters.sizes if the machine has it.";
        return Problem.CannotUse(
            new Where(JobReader.FileName, Key: "groups"),
            $"The group “{name}” has letters {group.HeightFactor:0.##} times as high as the others, {wishes}, and the machine has {Sizes}.",
            mend);
    }

    /// <summary>Groups whose letters come out in another height than their factor asks for.</summary>
    public IEnumerable<Problem> Notes(double heightMm)
    {
        foreach (var group in _groups.Where(g => Math.Abs(Nearest(g, heightMm) - (g.HeightFactor * heightMm)) >= SameMm))
        {
            yield return Problem.Note(
                new Where(JobReader.FileName, Key: "groups"),
                $"The group “{PlainText.Short(group.Name)}” gets letters {Nearest(group, heightMm):0.##} mm high: its heightFactor {group.HeightFactor:0.##} asks for {group.HeightFactor * heightMm:0.#} mm, and the machine has {Sizes}.",
                "Add the height to letters.sizes if the machine has it.");
        }

        foreach (var own in OwnNotes(heightMm))
        {
            yield return own;
        }
    }

    /// <summary>Names that get another height than is wished for them alone.</summary>
    private IEnumerable<Problem> OwnNotes(double heightMm)
    {
        foreach (var name in _own)
        {
            double asked = name.Wish!.HeightFactor * FactorOf(name.Group, heightMm) * heightMm;
            double given = FactorOf(name, heightMm) * heightMm;
            if (Math.Abs(given - asked) >= SameMm)
            {
                yield return Problem.Note(
                    new Where(JobReader.FileName, Key: "names", Name: PlainText.Short(name.Text)),
                    $"It gets letters {given:0.##} mm high: its heightFactor {name.Wish.HeightFactor:0.##} "
                        + $"asks for {asked:0.#} mm, and the machine has {Sizes}.",
                    "Add the height to letters.sizes if the machine has it.");
            }
        }
    }

    private Said Sizes => Wording.List([.. _heightsMm.Select(h => FormattableString.Invariant($"{h:0.##} mm"))]);

    private double Nearest(NameGroup group, double heightMm) => Nearest(heightMm * group.HeightFactor);

    private double Nearest(double askedMm) => _heightsMm.MinBy(h => Math.Abs(Math.Log(h / askedMm)));

    private bool IsNear(NameGroup group, double heightMm) =>
        Math.Abs(Math.Log(Nearest(group, heightMm) / (heightMm * group.HeightFactor))) <= Math.Log(MostOffFactor);
}
