using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.PlanFile;

/// <summary>
/// The four signs by which a sheet is told from an older one. A hooping's mark stands on that hooping's sheets, a round's on its
/// proof, the plan's on those of the whole plan. All come from texts and places alone, never from the log or from times, so that a sheet
/// stays what it is as long as its hooping does.
/// </summary>
public static class SheetMarks
{
    /// <summary>No sign that is easily taken for another: no 0, 1, I or O.</summary>
    private const string Signs = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";

    // Signs: 32 kinds of each make a million marks, of which no two sheets in one room are likely to be alike.
    private const int MarkSigns = 4;

    /// <summary>A mark as it is written, however it was typed; whatever is none stays what it is.</summary>
    public static string AsWritten(string typed) => typed.Trim().ToUpperInvariant();

    public static bool IsMark(string text) => text.Length == MarkSigns && text.All(Signs.Contains);

    public static string Of(StripPlan plan)
    {
        plan = plan.PartOf ?? plan;
        var said = new StringBuilder();
        AddStrip(said, plan);
        foreach (var round in plan.Rounds)
        {
            AddRound(said, plan, round);
        }

        foreach (var cloth in plan.Cloths)
        {
            Add(said, cloth.Number, cloth.LengthMm, cloth.WidthMm);
        }

        foreach (var hooping in plan.Hoopings)
        {
            AddHooping(said, plan, hooping);
        }

        return OfText(said.ToString());
    }

    public static string Of(StripPlan plan, Hooping hooping)
    {
        plan = plan.PartOf ?? plan;
        var said = new StringBuilder();
        AddStrip(said, plan);
        AddHooping(said, plan, hooping);
        return OfText(said.ToString());
    }

    public static string Of(StripPlan plan, Round round)
    {
        var said = new StringBuilder();
        AddStrip(said, plan.PartOf ?? plan);
        AddRound(said, plan, round);
        foreach (var segment in round.Segments)
        {
            Add(said, segment.Number, segment.StartMm, plan.OnClothMm(segment.LengthMm));
            AddNames(said, plan, segment);
        }

        foreach (var (hooping, _) in plan.HoopedIn(round))
        {
            said.Append(Of(plan, hooping)).Append('\n');
        }

        return OfText(said.ToString());
    }

    /// <summary>Of a sheet that there is before any plan, from what stands on it.</summary>
    public static string OfTexts(params IEnumerable<string> texts) => OfText(string.Join('\n', texts));

    private static void AddStrip(StringBuilder said, StripPlan plan)
    {
        Add(said, plan.LetterHeightMm, plan.Hem.Strip.CutWidthMm, plan.Hem.Strip.FinishedWidthMm, plan.MarkYMm, plan.FieldAlongMm,
            plan.FieldAcrossMm);

        // Crosses that are sewn are said of no sheet: all sheets were of them before there were others.
        said.Append(plan.Marks is MarkMethod.Drawn or MarkMethod.Paper ? HoldingKeys.Word(plan.Marks) : "");
    }

    private static void AddHooping(StringBuilder said, StripPlan plan, Hooping hooping)
    {
        Add(said, hooping.Number, hooping.Cloth, hooping.OnClothMm);
        said.Append(hooping.Frame is { } frame ? frame.Name + "\n" : "");
        foreach (var hooped in hooping.Segments)
        {
            var segment = hooped.Segment;
            Add(said, segment.Number, hooped.Round.Number, hooped.XMm, hooped.YMm, plan.OnClothMm(segment.LengthMm));
            if (hooped.LiesMm is { } lies)
            {
                Add(said, lies);
            }

            AddNames(said, plan, segment);
        }
    }

    private static void AddRound(StringBuilder said, StripPlan plan, Round round)
    {
        Add(said, round.Number, round.LengthMm);
        foreach (var tuck in RoundTucks.Of(plan, round))
        {
            Add(said, tuck.AtMm, tuck.WidthMm);
        }
    }

    private static void AddNames(StringBuilder said, StripPlan plan, Segment segment)
    {
        foreach (var name in segment.NamesAndMotifs)
        {
            said.Append(name.Lettered.Name.Text).Append('\n');
            Add(said, name.Order, plan.OnClothMm(name.StartMm - segment.StartMm), name.WidthMm, name.BaselineYMm);
        }
    }

    /// <summary>To the hundredth: what kinds of machine calculate differently is smaller.</summary>
    private static void Add(StringBuilder said, params ReadOnlySpan<double> numbers)
    {
        foreach (double number in numbers)
        {
            said.Append(CultureInfo.InvariantCulture, $"{Math.Round(number, 2) + 0.0:0.##};");
        }

        said.Append('\n');
    }

    private static string OfText(string said)
    {
        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(said));
        return string.Create(MarkSigns, hash, (signs, bytes) =>
        {
            for (int i = 0; i < signs.Length; i++)
            {
                signs[i] = Signs[bytes[i] % Signs.Length];
            }
        });
    }
}
