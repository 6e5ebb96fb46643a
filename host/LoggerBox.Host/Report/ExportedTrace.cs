using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Tables;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>A session as the columns of a trace file, whatever it is written as.</summary>
public static class ExportedTrace
{
    private static readonly string[] PressureNames = ["main", "clutch", "converter"];

    /// <summary>Time, speed, the pressures that were connected; gear, step and oil temperature where the session says any.</summary>
    public static IReadOnlyList<TableColumn> Columns(RecordedSession session, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(session);
        // They are read from the session's bytes each time that somebody looks.
        RecordedSample[] samples = [.. session.Samples];
        List<TableColumn> columns =
        [
            new NumberColumn("time_s", [.. samples.Select(sample => (double?)session.SecondsAt(sample.Microseconds))], new Decimals(6, AreKept: true)),
            new NumberColumn("rpm", [.. samples.Select(sample => sample.SpeedTenths == SampleSet.Missing ? null : (double?)(sample.SpeedTenths / 10.0))], new Decimals(1, AreKept: true)),
        ];

        // Seven digits keep a count apart from its neighbours in every unit.
        columns.AddRange(Enumerable.Range(1, 3)
            .Where(channel => session.Header.Pressures[channel - 1].Kind != ChannelKind.None)
            .Select(channel => new NumberColumn($"{PressureNames[channel - 1]}_{unit.Code()}", [.. samples.Select(sample => Pressure(sample, session.Header, channel, unit))], new Decimals(6, AreKept: false))));
        AddSaid(columns, session, samples, EventKind.GearTag, said => new TextColumn("gear", [.. said.Select(code => code is int gear ? Words.GearCode((Gear)gear) : null)]));
        AddSaid(columns, session, samples, EventKind.StepMark, said => new TextColumn("step", [.. said.Select(code => code is int step and not 0 ? StepCodes.Text((Step)step) : null)]));
        AddSaid(columns, session, samples, EventKind.OilTemperature, said => new NumberColumn("oil_C", [.. said.Select(tenths => tenths / 10.0)], new Decimals(1, AreKept: true)));
        return columns;
    }

    /// <summary>A column of what events of one kind say, each from its moment on; none where there is no such event.</summary>
    private static void AddSaid(List<TableColumn> columns, RecordedSession session, RecordedSample[] samples, EventKind kind, Func<IEnumerable<int?>, TableColumn> column)
    {
        EventRecord[] events = [.. session.Events.Where(happening => happening.Kind == kind)];
        if (events.Length > 0)
        {
            columns.Add(column(Said(events, samples)));
        }
    }

    private static IEnumerable<int?> Said(EventRecord[] events, RecordedSample[] samples)
    {
        int next = 0;
        int? value = null;
        foreach (RecordedSample sample in samples)
        {
            while (next < events.Length && events[next].Microseconds <= sample.Microseconds)
            {
                value = events[next++].Value;
            }

            yield return value;
        }
    }

    private static double? Pressure(RecordedSample sample, SessionHeader header, int channel, PressureUnit unit)
    {
        int counts = sample.Of(channel);
        return counts == SampleSet.Missing ? null : header.Pressures[channel - 1].PascalFromCounts(counts) / unit.InPascal();
    }
}
