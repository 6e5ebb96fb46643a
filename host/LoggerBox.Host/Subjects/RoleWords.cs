using LoggerBox.Host.Archive;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Subjects;

/// <summary>What a session is to its job, in words.</summary>
public static class RoleWords
{
    public static string Of(SessionRole role) => role switch
    {
        SessionRole.Before => "before the repair",
        SessionRole.After => "after the repair",
        _ => "",
    };

    /// <summary>To stand before what is said of it: "After the repair: ".</summary>
    public static string Before(SessionRole role) => role == SessionRole.Any ? "" : ReportWords.Capital(Of(role)) + ": ";

    /// <summary>To stand after a name: ", after the repair".</summary>
    public static string After(SessionRole role) => role == SessionRole.Any ? "" : ", " + Of(role);
}
