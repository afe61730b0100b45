using NameBand.Common;

namespace NameBand.Web.Table;

/// <summary>What is said of work that ended by a fault: the machine's, or the program's own.</summary>
internal static class Fault
{
    public static Said OfReading(Exception fault) => $"The machine could not read: {fault.Message}";

    public static Said OfWriting(Exception fault) => $"The machine could not write: {fault.Message}";

    public static Said InWords(Exception fault) =>
        $"This is a fault in NameBand, not in your files. {fault.GetType().Name}: {fault.Message}";
}
