using System.Linq;

namespace LoggerBox.Host.Archive;

/// <summary>How long what a person writes on a work order may be: a name stands in a line, a story on a page.</summary>
internal static class JobTexts
{
    public const int LongestName = 200;
    public const int LongestStory = 2000;

    /// <summary>The first text that is too long, as a sentence's part; null: none is.</summary>
    public static string? TooLong(JobDetails details) => TooLong(
        (details.Truck, "truck's name", LongestName),
        (details.Serial, "serial", LongestName),
        (details.Fuel, "fuel", LongestName),
        (details.Technician, "technician's name", LongestName),
        (details.SheetName, "data sheet's name", LongestName),
        (details.OilLevel, "oil level", LongestName),
        (details.OilLook, "look of the oil", LongestName),
        (details.OilRead, "way the oil was read", LongestName),
        (details.Complaint, "complaint", LongestStory));

    public static string? TooLong(string cause, string correction) => TooLong((cause, "cause", LongestStory), (correction, "correction", LongestStory));

    private static string? TooLong(params (string Text, string Name, int Most)[] texts) => texts
        .Where(one => one.Text.Length > one.Most)
        .Select(one => $"the {one.Name} has {one.Text.Length} signs, and {one.Most} is the most")
        .FirstOrDefault();
}
