using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>A session as a trace file: what any program, this one too, reads again.</summary>
public static class CsvExport
{
    private static readonly string[] PressureNames = ["main", "clutch", "converter"];

    public static string Render(RecordedSession session, string title, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(session);
        int[] channels = [.. Enumerable.Range(1, 3).Where(channel => session.Header.Pressures[channel - 1].Kind != ChannelKind.None)];
        EventRecord[] gears = [.. session.Events.Where(happening => happening.Kind == EventKind.GearTag)];
        EventRecord[] marks = [.. session.Events.Where(happening => happening.Kind == EventKind.StepMark)];
        EventRecord[] oil = [.. session.Events.Where(happening => happening.Kind == EventKind.OilTemperature)];

        var text = new StringBuilder();
        text.Append("# ").Append(PlainText.Of(title)).Append('\n');
        text.Append("time_s,rpm").AppendJoin("", channels.Select(channel => $",{PressureNames[channel - 1]}_{unit.Code()}"));
        text.Append(gears.Length > 0 ? ",gear" : "").Append(marks.Length > 0 ? ",step" : "").Append(oil.Length > 0 ? ",oil_C" : "").Append('\n');

        var gear = new LastSaid(gears);
        var mark = new LastSaid(marks);
        var temperature = new LastSaid(oil);
        long zero = session.Header.StartMicroseconds;
        foreach (RecordedSample sample in session.Samples)
        {
            text.Append(CultureInfo.InvariantCulture, $"{(sample.Microseconds - zero) / 1e6:F6}");
            text.Append(',').Append(sample.SpeedTenths == SampleSet.Missing ? "" : (sample.SpeedTenths / 10.0).ToString("F1", CultureInfo.InvariantCulture));
            foreach (int channel in channels)
            {
                text.Append(',').Append(Pressure(sample, session.Header, channel, unit));
            }

            AppendSaid(text, gears.Length > 0, gear.At(sample.Microseconds), GearLetter);
            AppendSaid(text, marks.Length > 0, mark.At(sample.Microseconds), code => StepCodes.Text((Step)code));
            AppendSaid(text, oil.Length > 0, temperature.At(sample.Microseconds), tenths => (tenths / 10.0).ToString("F1", CultureInfo.InvariantCulture));
            text.Append('\n');
        }

        return text.ToString();
    }

    private static void AppendSaid(StringBuilder text, bool column, int? value, Func<int, string> spell)
    {
        if (column)
        {
            text.Append(',').Append(value is int said ? spell(said) : "");
        }
    }

    private static string Pressure(RecordedSample sample, SessionHeader header, int channel, PressureUnit unit)
    {
        int counts = channel switch
        {
            Channel.Main => sample.MainCounts,
            Channel.Clutch => sample.ClutchCounts,
            _ => sample.ConverterCounts,
        };

        // Seven digits keep a count apart from its neighbours in every unit.
        return counts == SampleSet.Missing ? "" : (header.Pressures[channel - 1].PascalFromCounts(counts) / unit.InPascal()).ToString("0.######", CultureInfo.InvariantCulture);
    }

    private static string GearLetter(int code) => (Gear)code switch
    {
        Gear.Neutral => "N",
        Gear.Forward => "F",
        Gear.Reverse => "R",
        _ => "",
    };

    /// <summary>Walks events of one kind along with the samples: the value that holds from the event on.</summary>
    private sealed class LastSaid(IReadOnlyList<EventRecord> events)
    {
        private int next;
        private int? value;

        public int? At(long microseconds)
        {
            while (next < events.Count && events[next].Microseconds <= microseconds)
            {
                value = events[next++].Value;
            }

            return value;
        }
    }
}
