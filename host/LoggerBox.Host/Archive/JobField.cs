namespace LoggerBox.Host.Archive;

/// <summary>What of a work order can be put right, as a correction's row names it.</summary>
public static class JobField
{
    public const string Truck = "truck";
    public const string Serial = "serial";
    public const string Hours = "hours";
    public const string Complaint = "complaint";
    public const string Cause = "cause";
    public const string Correction = "correction";
}
