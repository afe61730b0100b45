namespace NameBand.Reports;

/// <summary>The exit status of a command; 64 (a wrong command line) belongs to the command line itself.</summary>
public enum ExitStatus
{
    AllPlaced = 0,
    NeedsPerson = 1,
    CannotUse = 2,
}
