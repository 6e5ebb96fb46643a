using System;
using System.Linq;
using System.Text.Json;
using LoggerBox.App.Console;
using LoggerBox.Host;
using LoggerBox.Host.Live;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.App.Watching;

/// <summary>The same for programs: one object a line, a missing value is null.</summary>
internal sealed class JsonLines(Terminal terminal) : IWatchDisplay
{
    private readonly Pace pace = new(TimeSpan.FromSeconds(1), TimeProvider.System);

    public void Show(LiveMoment moment)
    {
        if (pace.IsDue(moment))
        {
            JsonText.WriteLine(terminal.Out, json => Write(json, moment));
        }
    }

    public void Tell(string sentence) => terminal.Error.WriteLine(sentence);

    private static void Write(Utf8JsonWriter json, LiveMoment moment)
    {
        json.WriteStartObject();
        json.WriteReading("time_s", moment.Seconds);
        json.WriteBoolean("recording", moment.Recording);
        Write(json, "rpm", moment.Speed);
        json.WriteString("unit", moment.Pressures[0].Unit);
        Write(json, "main", moment.Pressures[0]);
        Write(json, "clutch", moment.Pressures[1]);
        Write(json, "converter", moment.Pressures[2]);
        json.WriteString("gear", moment.Gear switch { Gear.Neutral => "N", Gear.Forward => "F", Gear.Reverse => "R", _ => null });
        json.WriteString("step", moment.Step == Step.None ? null : StepCodes.Text(moment.Step));
        json.WriteReading("stall_left_s", moment.StallSecondsLeft);
        json.WriteReading("cooldown_left_s", moment.CooldownSecondsLeft);
        json.WriteString("cue", moment.CueText.Length == 0 ? null : moment.CueText);
        json.WriteStrings("captured", moment.Captured.Select(StepCodes.Text));
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, LiveFigure figure)
    {
        json.WriteStartObject(name);
        json.WriteReading("value", figure.Value);
        json.WriteReading("min", figure.Limit?.Min);
        json.WriteReading("max", figure.Limit?.Max);
        json.WriteEndObject();
    }
}
