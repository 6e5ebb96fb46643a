namespace LoggerBox.Host.Traces;

/// <summary>A trace file and what the command line says about it.</summary>
/// <param name="RangeMain">What 4 to 20 mA stand for where the column is a loop current; likewise clutch and converter.</param>
/// <param name="Columns">What columns of other names are.</param>
/// <param name="PulsesPath">File of pickup edge times in place of an rpm column; needs <paramref name="PulsesPerRevolution"/>.</param>
public sealed record TraceSource(
    string Path,
    ChannelRange? RangeMain = null,
    ChannelRange? RangeClutch = null,
    ChannelRange? RangeConverter = null,
    string? PulsesPath = null,
    double? PulsesPerRevolution = null,
    ColumnMap? Columns = null);
