using System;
using System.Collections.Generic;

namespace LoggerBox.Host.Judging.FromJobs;

/// <summary>What one job measured, fit to draw limits from.</summary>
/// <param name="Id">The job's id.</param>
/// <param name="Date">When it was opened.</param>
/// <param name="Limits">By the place of the limit in a sheet: "engine.idle_rpm", "pressure.hold.forward.clutch" (kPa), "engagement.time_s".</param>
public sealed record JobReadings(string Id, DateTimeOffset Date, string Serial, IReadOnlyDictionary<string, SheetReading> Limits);

/// <param name="Uncertainty">Expanded, 95.45 %.</param>
public sealed record SheetReading(double Value, double Uncertainty);
