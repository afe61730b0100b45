using NameBand.Cloth;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>Hand work at each hooping, act by act.</summary>
internal sealed class HoopHands
{
    private readonly HandSettings _hands;
    private readonly WorkMatter _matter;
    private readonly HashSet<int> _first;
    private readonly Dictionary<int, Frame> _frames;
    private readonly Dictionary<int, HoopingFigures> _figures;
    private readonly bool _backingStays;

    public HoopHands(WorkMatter matter)
    {
        _matter = matter;
        _hands = matter.Job.Hands;
        _figures = matter.Hoopings.ToDictionary(h => h.Number);
        _frames = matter.Plan.Hoopings.Where(h => h.Frame is not null).ToDictionary(h => h.Number, h => h.Frame!);
        _backingStays = JobCloth.Of(matter.Job)?.BackingStays ?? false;
        int[] known = [.. matter.Plan.Hoopings.Select(h => h.Number).Where(matter.IsHooped)];
        _first = [.. (matter.Log?.Sewings ?? []).Concat(known).Distinct().Where(known.Contains).Take(StartingValues.FirstHoopings)];
    }

    /// <summary>Minutes of hooping and setting straight, which the first few take longer; 0 without a hoop.</summary>
    public double HoopingMinutes(int hooping) =>
        !_matter.IsHooped(hooping) ? 0 : MinutesIn(_frames.GetValueOrDefault(hooping)) is var inFrame && IsFirst(hooping)
            ? inFrame.FirstMinutes : inFrame.Minutes;

    /// <summary>Minutes of hooping in a frame, and of each of the first ones; null: the job's own.</summary>
    public (double Minutes, double FirstMinutes) MinutesIn(Frame? frame)
    {
        double slower = _hands.FirstHoopingsMinutes - _hands.HoopingMinutes;
        double minutes = frame?.MountMinutes ?? _hands.HoopingMinutes;
        return (minutes, frame?.FirstMountMinutes ?? (minutes + slower));
    }

    public bool IsFirst(int hooping) => _first.Contains(hooping);

    /// <summary>Minutes of changing to the thread of the marks; changing back is the machine's stop.</summary>
    public double MarksThreadMinutes => _matter.Job.Machine.SecondsPerStop / 60;

    public double MarksOutMinutes => _hands.MarksOutMinutes;

    /// <summary>Minutes of crosses that are drawn, or stand on paper, and are brought under the needle.</summary>
    public double MetMarksMinutes(MarkMethod marks) => marks switch
    {
        MarkMethod.Drawn => _hands.DrawnMarksMinutes,
        MarkMethod.Paper => _hands.PaperMarksMinutes,
        _ => 0,
    };

    public bool TearsByTheMetre(Hooping hooping) => !_matter.IsHooped(hooping.Number) && _hands.TearAwayMinutesPerMetre is not null;

    public double TearAwayMinutesPerName => _backingStays ? 0 : _hands.TearAwayMinutesPerName;

    public double TearAwayMinutesPerMetre => _backingStays ? 0 : _hands.TearAwayMinutesPerMetre ?? 0;

    /// <summary>Names in a hooping, headings too: each is clipped and freed of its backing.</summary>
    public static int NamesIn(Hooping hooping) => hooping.Segments.Sum(s => s.Segment.Names.Length);

    /// <summary>Numbers of the names in a hooping.</summary>
    public static IEnumerable<int> OrdersIn(Hooping hooping) => hooping.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Order);

    public static double MetresIn(Hooping hooping) => hooping.Segments.Sum(s => s.Segment.LengthMm) / 1000;

    public int SnipsIn(Hooping hooping) => _figures.GetValueOrDefault(hooping.Number)?.Snips ?? 0;

    /// <summary>What of hands the log times of one name that is logged by itself, rest included.</summary>
    /// <param name="part">Of its hooping's threads.</param>
    public double TimedMinutes(Hooping hooping, double part, NameKeys keys)
    {
        var letters = _matter.Job.Letters;
        double minutes = (keys.Keys * letters.SecondsPerKey / 60) + (keys.Pieces * letters.PositioningMinutes)
            + _hands.ClippingMinutesPerName
            + (TearsByTheMetre(hooping) ? 0 : TearAwayMinutesPerName) + (SnipsIn(hooping) * part * _hands.SecondsPerSnip / 60);
        return minutes * (1 + _hands.RestAllowance);
    }

    /// <summary>What the sewing log times as by hand: hooping, setting straight, clipping and tearing away, rest included.</summary>
    public double TimedMinutes(Hooping hooping)
    {
        int names = NamesIn(hooping);
        bool byTheMetre = TearsByTheMetre(hooping);
        double minutes = HoopingMinutes(hooping.Number) + MetMarksMinutes(_matter.WayOf(hooping.Number).Marks)
            + (names * (_hands.ClippingMinutesPerName + (byTheMetre ? 0 : TearAwayMinutesPerName)))
            + (SnipsIn(hooping) * _hands.SecondsPerSnip / 60) + (byTheMetre ? MetresIn(hooping) * TearAwayMinutesPerMetre : 0);
        return minutes * (1 + _hands.RestAllowance);
    }

    /// <summary>
    /// Changes to another thread by hand at a hooping. Those inside a needle path are the machine's stops; where marks are sewn first, in a
    /// thread of their own, it is changed after them anyway.
    /// </summary>
    public int ThreadChanges(int hooping)
    {
        var way = _matter.WayOf(hooping);
        return _matter.Plan.Threads.Of(hooping) is not { } threads ? 0
            : (threads.ChangesBefore && !way.HasSewnMarks ? 1 : 0) + (way.FollowsCoordinates ? 0 : threads.Inside);
    }

    /// <summary>What the log does not time: the thread of the marks, and taking them out; and changes to another thread.</summary>
    public double UntimedMinutes(int hooping) =>
        ((_matter.WayOf(hooping).HasSewnMarks ? MarksThreadMinutes + MarksOutMinutes : 0) + (ThreadChanges(hooping) * MarksThreadMinutes))
            * (1 + _hands.RestAllowance);
}
