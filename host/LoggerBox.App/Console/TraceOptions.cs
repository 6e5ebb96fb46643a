using System.CommandLine;
using System.Linq;
using LoggerBox.Host.Traces;

namespace LoggerBox.App.Console;

/// <summary>What a trace file cannot say of itself: loop ranges, pickup edges, what columns of other names are.</summary>
internal sealed class TraceOptions
{
    private readonly Option<string?> rangeMain = Range("main", "0..500psi");
    private readonly Option<string?> rangeClutch = Range("clutch", "0..500psi");
    private readonly Option<string?> rangeConverter = Range("converter", "0..300psi");
    private readonly Option<string?> pulses =
        SharedOptions.NotEmpty(new Option<string?>("--pulses") { Description = Messages.PulsesOption, HelpName = "FILE" });
    private readonly Option<double?> pulsesPerRevolution = new("--pulses-per-rev") { Description = Messages.PulsesPerRevolutionOption, HelpName = "X" };

    private readonly Option<string[]> map = new("--map") { Description = TraceMessages.MapOption, HelpName = "READING=NAME" };
    private readonly Option<string?> mapFile = SharedOptions.NotEmpty(new Option<string?>("--map-file") { Description = TraceMessages.MapFileOption, HelpName = "FILE" });

    public void AddTo(Command verb)
    {
        AddRangesTo(verb);
        verb.Options.Add(pulses);
        verb.Options.Add(pulsesPerRevolution);
    }

    /// <summary>For a verb that reads two traces: pickup edges belong to one.</summary>
    public void AddRangesTo(Command verb)
    {
        verb.Options.Add(rangeMain);
        verb.Options.Add(rangeClutch);
        verb.Options.Add(rangeConverter);
        verb.Options.Add(map);
        verb.Options.Add(mapFile);
    }

    /// <summary>The first of them that is on the command line; null where none is.</summary>
    public string? FirstGiven(ParseResult line) =>
        ((Option[])[rangeMain, rangeClutch, rangeConverter, pulses, pulsesPerRevolution, map, mapFile]).FirstOrDefault(option => line.GetResult(option) is { Implicit: false })?.Name;

    public TraceSource Source(ParseResult line, string path) => new(
        path,
        Parsed(line.GetValue(rangeMain)),
        Parsed(line.GetValue(rangeClutch)),
        Parsed(line.GetValue(rangeConverter)),
        line.GetValue(pulses),
        line.GetValue(pulsesPerRevolution),
        ColumnMap.Of(line.GetValue(mapFile), line.GetValue(map) ?? []));

    private static ChannelRange? Parsed(string? text) => text is null ? null : ChannelRange.Parse(text);

    private static Option<string?> Range(string channel, string shape) => new("--range-" + channel) { Description = Messages.RangeOption(channel), HelpName = shape };
}
