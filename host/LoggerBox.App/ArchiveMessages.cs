using System.Globalization;

namespace LoggerBox.App;

/// <summary>What the `archive` verbs say.</summary>
internal static class ArchiveMessages
{
    public const string Verb = "The archive itself: is all of it as it was written, and a copy of it.";
    public const string CheckVerb = "Reads all that the archive holds and compares it with what was noted when it came.";
    public const string BackupVerb = "Copies the archive, as it is at this moment, into a new SQLite file or an empty PostgreSQL database; others may go on using it.";
    public const string BackupFile = "The copy: a file that is not there yet, or the address of a database that holds nothing.";

    public static string Sound(string path, int sessions, int jobs) =>
        string.Create(CultureInfo.InvariantCulture, $"{path}: {sessions} sessions and {jobs} jobs, all as they were written.");

    public static string Damaged(string path, int places) =>
        string.Create(CultureInfo.InvariantCulture, $"{path} is damaged in {places} places, named above: keep a copy of it as it is before you restore an older one.");

    public static string Copied(string path, string copy, int sessions, int jobs) =>
        string.Create(CultureInfo.InvariantCulture, $"{path} is copied to {copy}: {sessions} sessions and {jobs} jobs, read back and compared.");
}
