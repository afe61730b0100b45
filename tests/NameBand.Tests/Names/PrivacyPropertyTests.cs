using CsCheck;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>
/// Nobody is sewn who asks not to be: held against random lists, decisions and lists exported anew, with rules that know
/// nothing of how the program finds its answer.
/// </summary>
public class PrivacyPropertyTests
{
    private const string ListHead = "Name,Mail,Anonymous,Show my name?\n";
    private const string Head = "list,line,was,decision,text,why,details,show\n";

    private static readonly string[] Pool = ["Ada Reed", "ada reed", "Bo Marsh", "Ilse Varga", "Wenna Tregear", "Ada  Reed", "Zoë Holm"];
    private static readonly string[] Hides = ["", "", "no", "yes", "maybe"];
    private static readonly string[] Shows = ["yes", "yes", "no", "", "perhaps"];

    /// <param name="Mail">Tells people apart.</param>
    private sealed record Person(string Name, string Mail, string Anonymous, string Show)
    {
        public string Text => string.Join(' ', Name.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        public bool AsksNot => Anonymous == "yes" || Show == "no";

        public bool IsUnclear => !AsksNot && (Anonymous == "maybe" || Show is "" or "perhaps");

        /// <summary>A blank and a no under “Anonymous” both show, and are yet two answers.</summary>
        public bool SaysTheSame(Person other) => (Text, Anonymous, Show) == (other.Text, other.Anonymous, other.Show);
    }

    /// <param name="Decision">Null: none.</param>
    private sealed record Decided(string? Decision, bool IsRecorded);

    private static readonly Gen<Person[]> People =
        from count in Gen.Int[1, 6]
        from names in Gen.Int[0, Pool.Length - 1].Array[count]
        from hides in Gen.Int[0, Hides.Length - 1].Array[count]
        from shows in Gen.Int[0, Shows.Length - 1].Array[count]
        select Enumerable.Range(0, count).Select(i => new Person(Pool[names[i]], $"m{i}@x.example", Hides[hides[i]], Shows[shows[i]]))
            .ToArray();

    private static readonly Gen<Decided[]> Decisions = (
        from word in Gen.Int[0, 3]
        from recorded in Gen.Bool
        select new Decided(new[] { null, "keep", "leave out", "change" }[word], recorded)).Array[6];

    /// <summary>For each person what changes later: 0 nothing, 1 the name, 2 and 3 an answer, 4 gone; and an order.</summary>
    private static readonly Gen<(int[] What, int[] To, double[] Order)> Later = Gen.Select(
        Gen.Int[0, 5].Array[6], Gen.Int[0, 4].Array[6], Gen.Double[0, 1].Array[6]);

    [Fact]
    public void A_decision_is_for_what_the_row_said_and_a_later_no_always_wins() =>
        Gen.Select(People, Decisions, Later).Sample(
            (before, decided, later) =>
            {
                var first = Lists.Read(Csv(before)).Value!;
                string corrections = Head
                    + string.Concat(first.Rows.Zip(decided).Where(p => p.Second.Decision is not null).Select(p => Line(p.First, p.Second)));
                var after = Changed(before, later);
                if (after.Length == 0)
                {
                    return;
                }

                var read = Lists.Read(Csv(after), corrections).Value!;
                Assert.Equal(after.Length, read.Rows.Length);
                foreach (var (now, row) in after.Zip(read.Rows))
                {
                    bool hasHiddenNamesake =
                        read.Rows.Any(r => r.Was == row.Was && r is { Outcome: RowOutcome.LeftOut, AsksNotToBeShown: true });
                    int index = Array.FindIndex(before, p => p.Mail == now.Mail);
                    bool isOnAnothersLine = row.Row.Line - 2 is var at && at < before.Length && at != index && before[at].Text == now.Text;
                    if (decided[index].Decision is null && isOnAnothersLine)
                    {
                        // The name and the line agree: that is how a decision is found where no details were written down.
                        continue;
                    }

                    Assert.True(
                        decided[index].Decision is not null || !hasHiddenNamesake || row.Outcome != RowOutcome.Placed,
                        $"{now} became {row}");
                    Check(before[index], decided[index], now, row);
                }
            },
            iter: 2000, seed: "0000KOIPe7r4");

    private static void Check(Person then, Decided decided, Person now, ListedRow row)
    {
        bool isSame = then.SaysTheSame(now);
        bool isKept = decided is { Decision: "keep" };
        if (now.AsksNot)
        {
            Assert.Equal(isKept && decided.IsRecorded && isSame ? RowOutcome.Placed : RowOutcome.LeftOut, row.Outcome);
            return;
        }

        if (decided.Decision is null)
        {
            Assert.True(!now.IsUnclear || row.Outcome == RowOutcome.Held, $"{now} became {row}");
            return;
        }

        if (then.Text != now.Text || (decided.IsRecorded && !isSame))
        {
            Assert.Equal(RowOutcome.Held, row.Outcome);
            Assert.Contains("decide again", row.Reason.English);
            return;
        }

        if (decided.Decision == "leave out")
        {
            Assert.Equal(RowOutcome.LeftOut, row.Outcome);
        }
        else if (isKept)
        {
            Assert.Equal(RowOutcome.Placed, row.Outcome);
        }
        else
        {
            // Another spelling settles what the row answers only where that answer was written down with it.
            Assert.Equal(now.IsUnclear && !decided.IsRecorded ? RowOutcome.Held : RowOutcome.Placed, row.Outcome);
        }
    }

    /// <summary>Two rows that say the same but for their answers are perhaps one person, who asks for it in one of them.</summary>
    [Fact]
    public void Nobody_is_sewn_whose_second_row_asks_not_to_be_shown_unless_that_was_known_when_it_was_decided() =>
        Gen.Select(People, Decisions, Gen.Int[0, 4].Array[6]).Sample(
            (people, decided, to) =>
            {
                Person[] Twins(IEnumerable<Person> from) => [.. from.Select(p => p with { Name = Pool[2], Mail = "one@x.example" })];
                var before = Twins(people);
                var first = Lists.Read(Csv(before)).Value!;
                var after = Twins(people.Select((p, i) => p with { Anonymous = Hides[to[i]] }));
                var known = before.Where(p => p.AsksNot).Any();
                string corrections = Head
                    + string.Concat(first.Rows.Zip(decided).Where(p => p.Second.Decision == "keep").Select(p => Line(p.First, p.Second)));
                var read = Lists.Read(Csv(after), corrections).Value!;
                for (int i = 0; i < after.Length; i++)
                {
                    bool knew = decided[i] is { Decision: "keep", IsRecorded: true } && known && before[i].SaysTheSame(after[i]);
                    Assert.True(
                        knew || !after.Any(p => p.AsksNot) || read.Rows[i].Outcome != RowOutcome.Placed
                        || after.Where((p, j) => p.AsksNot && read.Rows[j].Outcome == RowOutcome.Placed).Any(),
                        $"{after[i]} became {read.Rows[i]}");
                }
            },
            iter: 1500, seed: "0000KOIPe7r4");

    /// <summary>A separator inside a name or a remark pushes every cell behind it to the right, a wish among them.</summary>
    [Fact]
    public void No_wish_is_lost_when_a_separator_pushes_it_to_another_column() =>
        Gen.Select(Gen.Int[0, 23], Gen.Int[0, 2], Gen.Int[0, 4], Gen.Int[0, 2], Gen.Bool).Sample(
            (order, where, kind, decoy, isPublic) =>
            {
                int[] places = Permutation(order);
                string[] heads = ["Name", kind % 2 == 0 ? "Mail" : "Sum", "Note", isPublic ? "Public" : "Anonymous"];
                string value = kind % 2 == 0 ? "a@x.example" : "30";
                string Row(string name, string note, string wish) =>
                    string.Join(',', places.Select(p => new[] { name, value, note, wish }[p])) + (kind > 2 ? "," : "") + "\n";
                string shown = isPublic ? "yes" : "";

                // What comes to stand under the wish may read as if the name might be shown.
                string behind = new[] { " dear", isPublic ? " yes" : "", isPublic ? " yes" : " no" }[decoy];
                string csv = string.Join(',', places.Select(p => heads[p])) + (kind > 2 ? ",Later" : "") + "\n"
                    + Row("Ada Reed", "", shown) + Row("Bo Marsh", "hello", shown) + Row("Jo Farrow", "", shown)
                    + Row(where != 1 ? "Berg," + behind : "Anna Berg", where != 0 ? "thanks," + behind : "", isPublic ? "no" : "yes");
                var read = Lists.Read(csv);
                Assert.Equal(3, read.Value!.Rows.Take(3).Count(r => r.Outcome == RowOutcome.Placed));
                Assert.NotEqual(RowOutcome.Placed, read.Value.Rows[3].Outcome);
                Assert.NotEqual(RowOutcome.Merged, read.Value.Rows[3].Outcome);
            },
            iter: 2000, seed: "0000KOIPe7r4");

    /// <summary>The last column fits again where everything before it was pushed along.</summary>
    [Fact]
    public void A_column_that_fits_by_chance_behind_one_that_does_not_proves_nothing()
    {
        var read = Lists.Read("Name,Mail,Paid,Anonymous,Sum,Age\nAda Reed,a@x.example,no,,30,44\nBo Marsh,b@x.example,no,,20,41\n"
            + "Jo Farrow,c@x.example,yes,,25,40\nBerg, Anna,d@x.example,no,yes,30,44\n");
        Assert.Equal("2 placed Ada Reed\n3 placed Bo Marsh\n4 placed Jo Farrow\n5 held Berg", Lists.Table(read));
    }

    /// <summary>What an owner says to a picture is about the letters; it never says that a name may be sewn.</summary>
    [Fact]
    public void No_approval_makes_a_name_be_sewn() =>
        Gen.Select(People, Gen.Int[0, 2].Array[6]).Sample(
            (people, states) =>
            {
                using var folder = new TemporaryFolder();
                folder.With("names.csv", Csv(people));
                var without = Lists.Read(folder);
                folder.With("approvals.csv", "list,line,name,state,date,text,details\n" + string.Concat(without.Value!.Rows.Select((r, i) =>
                    CsvText.Row([r.Row.List, $"{r.Row.Line}", r.Text, new[] { "agreed", "change wished", "asked" }[states[i]], "",
                        states[i] == 1 ? "Mara Holm" : "", r.DetailsPrint]) + "\n")));
                var report = Approvals.Of(folder.FullPath, Lists.Read(folder).Value!, Corrections.None)!;
                Assert.Equal(Lists.Table(without), Lists.Table(Lists.Read(folder)));
                Assert.DoesNotContain(report.Names, n => n.Row.Outcome == RowOutcome.LeftOut);
                var ordered = Approvals.AgreedFirst(without.Value, report);
                Assert.Equal(without.Value.Names.Select(n => n.Row).Order(ByLine), ordered.Names.Select(n => n.Row).Order(ByLine));
            },
            iter: 300, seed: "0000KOIPe7r4");

    private static Comparer<RowRef> ByLine { get; } = Comparer<RowRef>.Create((a, b) => a.Line.CompareTo(b.Line));

    private static string Csv(IEnumerable<Person> people) =>
        ListHead + string.Concat(people.Select(p => $"{p.Name},{p.Mail},{p.Anonymous},{p.Show}\n"));

    private static string Line(ListedRow row, Decided decided) => CsvText.Row(
        [row.Row.List, $"{row.Row.Line}", row.Was, decided.Decision!,
        decided.Decision == "change" ? $"Quill {row.Row.Line} Other{(char)('a' + row.Row.Line)}" : "", "", row.DetailsPrint,
        decided.IsRecorded ? row.Show : ""]) + "\n";

    private static Person[] Changed(Person[] before, (int[] What, int[] To, double[] Order) later) =>
        [.. before.Select((p, i) => (Order: later.Order[i], What: later.What[i], Person: later.What[i] switch
        {
            1 => p with { Name = Pool[later.To[i]] },
            2 => p with { Anonymous = Hides[later.To[i]] },
            3 => p with { Show = Shows[later.To[i]] },
            _ => p,
        })).Where(p => p.What != 4).OrderBy(p => p.Order).Select(p => p.Person)];

    private static int[] Permutation(int number)
    {
        var left = new List<int> { 0, 1, 2, 3 };
        var order = new List<int>();
        for (int i = 4; i > 0; i--)
        {
            order.Add(left[number % i]);
            left.RemoveAt(number % i);
            number /= i;
        }

        return [.. order];
    }
}
