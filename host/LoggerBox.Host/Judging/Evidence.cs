using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>All that a judgement rests on: the readings that count, the sheet, what the work order says.</summary>
public sealed class Evidence
{
    private IReadOnlyList<Evidence>? bySession;

    public Evidence(IReadOnlyList<RecordedSession> sessions, DataSheet sheet, JobFacts facts, StepReadings steps)
    {
        Sessions = sessions;
        Sheet = sheet;
        Facts = facts;
        Steps = steps;
        Engine = EngineOf(sheet, facts);
    }

    public IReadOnlyList<RecordedSession> Sessions { get; }

    public DataSheet Sheet { get; }

    public JobFacts Facts { get; }

    public StepReadings Steps { get; }

    public EngineLimits Engine { get; }

    public Measured? Governed => Steps.Good(Step.Governed)?.Rpm;

    /// <summary>
    /// Of the newest session that has both. A load pulls an engine down: where the relief's speed is the higher one beyond doubt, one of the
    /// two was another step, and there is no drop.
    /// </summary>
    public Measured? ReliefDrop => Newest(one => one.Governed is { } governed && one.Steps.Good(Step.Relief)?.Rpm is { } relief && governed.Less(relief) is var drop && drop.Value >= -drop.Expanded ? drop : null);

    public Measured? RunUp => RunUpReadings.Seconds(Sessions, Governed?.Value);

    public double? AltitudeMetres => Facts.AltitudeMetres ?? Sheet.SiteAltitudeMetres;

    public double? AirCelsius => Facts.AirCelsius ?? Sheet.SiteAirCelsius;

    /// <summary>The evidence of each session by itself, newest first: a difference of two sessions is one of two states of the truck.</summary>
    public IReadOnlyList<Evidence> BySession =>
        bySession ??= Sessions.Count == 1 ? [this] : [.. Sessions.Reverse().Select(session => new Evidence([session], Sheet, Facts, Steps.Of(session)))];

    /// <summary>A difference as the newest session that has it gives it.</summary>
    public T? Newest<T>(Func<Evidence, T?> difference)
        where T : class => BySession.Select(difference).FirstOrDefault(found => found is not null);

    /// <summary>A clutch that took no pressure whenever it was selected, as far as the hose could see it.</summary>
    public bool NeverFilled(Gear gear) => !Sheet.ClutchPortPerGear && EngagementReadings.NeverFilled(Sessions, gear);

    /// <summary>Pressure reading of a step in the sheet's unit.</summary>
    public Measured? InSheetUnit(Measured? pascal) => pascal?.Scaled(1 / Sheet.Unit.InPascal());

    private static EngineLimits EngineOf(DataSheet sheet, JobFacts facts) =>
        FuelLimits.IsFuelUnknown(sheet, facts.Fuel) ? FuelLimits.Common(sheet) : sheet.EngineFor(facts.Fuel);
}
