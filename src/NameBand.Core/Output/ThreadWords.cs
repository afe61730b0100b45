using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>What is said of the threads of a hooping, where the job has several.</summary>
public static class ThreadWords
{
    /// <summary>Empty where the job has one thread.</summary>
    public static Said Of(StripPlan plan, Hooping hooping)
    {
        if (plan.Threads.Of(hooping.Number) is not { } threads)
        {
            return "";
        }

        Said order = Said.Join(", then ", threads.Order.Select(t => t.InWords));
        Said before = hooping.Number == plan.Threads.All.Keys.Min()
            ? "Begin with this thread" : threads.ChangesBefore ? "Change the thread first" : "The thread stays as it is";
        return threads.Order.Length == 1 ? (Said)$"{before}: {order}."
            : hooping.HasNeedlePath ? (Said)$"{before}: {order}; the machine stops between them."
            : $"{before}: {order}, as the names have them.";
    }
}
