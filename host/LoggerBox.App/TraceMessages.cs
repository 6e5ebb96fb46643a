namespace LoggerBox.App;

/// <summary>What is said around the tables that traces come in and go out as.</summary>
internal static class TraceMessages
{
    public const string MapOption = "Which column of a foreign recording is which reading, for example rpm=\"Engine speed\" or main_psi=P1; once for each. The unit is that of the reading's name; time_ms and time_clock (14:05:07.250, with or without date) are times, too.";
    public const string MapFileOption = "The same from a file, a line rpm = \"Engine speed\" for each (TOML).";

    public static string ExportEnding(string path) =>
        $"{path} is neither a .csv, a .parquet nor a .lbjob file: a session's trace is exported as .csv or .parquet, a whole job as .lbjob; end the name in one of these.";
}
