using System.Collections.Generic;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>All that a judgement rests on: the readings that count, the sheet, what the work order says.</summary>
public sealed class Evidence
{
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

    public Measured? ReliefDrop =>
        Governed is { } governed && Steps.Good(Step.Relief)?.Rpm is { } relief ? governed.Less(relief) : null;

    public Measured? RunUp => RunUpReadings.Seconds(Sessions, Governed?.Value);

    public double? AltitudeMetres => Facts.AltitudeMetres ?? Sheet.SiteAltitudeMetres;

    public double? AirCelsius => Facts.AirCelsius ?? Sheet.SiteAirCelsius;

    /// <summary>A clutch that took no pressure whenever it was selected, as far as the hose could see it.</summary>
    public bool NeverFilled(Gear gear) => !Sheet.ClutchPortPerGear && EngagementReadings.NeverFilled(Sessions, gear);

    /// <summary>Pressure reading of a step in the sheet's unit.</summary>
    public Measured? InSheetUnit(Measured? pascal) => pascal?.Scaled(1 / Sheet.Unit.InPascal());

    private static EngineLimits EngineOf(DataSheet sheet, JobFacts facts) =>
        FuelLimits.IsFuelUnknown(sheet, facts.Fuel) ? FuelLimits.Common(sheet) : sheet.EngineFor(facts.Fuel);
}
