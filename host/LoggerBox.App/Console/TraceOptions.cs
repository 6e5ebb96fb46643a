using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>What a trace file cannot say of itself: loop ranges, pickup edges.</summary>
internal sealed class TraceOptions
{
    public Option<string?> RangeMain { get; } = new("--range-main") { Description = Messages.RangeOption("main"), HelpName = "0..500psi" };

    public Option<string?> RangeClutch { get; } = new("--range-clutch") { Description = Messages.RangeOption("clutch"), HelpName = "0..500psi" };

    public Option<string?> RangeConverter { get; } = new("--range-converter") { Description = Messages.RangeOption("converter"), HelpName = "0..300psi" };

    public Option<string?> Pulses { get; } = new("--pulses") { Description = Messages.PulsesOption, HelpName = "FILE" };

    public Option<double?> PulsesPerRevolution { get; } = new("--pulses-per-rev") { Description = Messages.PulsesPerRevolutionOption, HelpName = "X" };

    public void AddTo(Command verb)
    {
        verb.Options.Add(RangeMain);
        verb.Options.Add(RangeClutch);
        verb.Options.Add(RangeConverter);
        verb.Options.Add(Pulses);
        verb.Options.Add(PulsesPerRevolution);
    }

    public TraceSettings Settings(ParseResult line) => new(
        line.GetValue(RangeMain), line.GetValue(RangeClutch), line.GetValue(RangeConverter), line.GetValue(Pulses), line.GetValue(PulsesPerRevolution));
}

internal sealed record TraceSettings(string? RangeMain, string? RangeClutch, string? RangeConverter, string? Pulses, double? PulsesPerRevolution);
