using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.DataSheets;

/// <summary>[engine] and the [engine.FUEL] tables of a dual-fuel truck, each completed from [engine].</summary>
internal static class EngineSection
{
    public static (EngineLimits Engine, IReadOnlyDictionary<string, EngineLimits> ByFuel) Read(TableReader? reader)
    {
        var byFuel = new Dictionary<string, EngineLimits>(StringComparer.OrdinalIgnoreCase);
        if (reader is null)
        {
            return (new EngineLimits(), byFuel);
        }

        string? fuel = reader.Text("fuel");
        EngineLimits general = Limits(reader) with { Fuel = fuel };
        foreach (SheetEntry entry in reader.Table.Entries.Where(IsFuelTable))
        {
            TableReader own = reader.Section(entry.Key)!;
            EngineLimits limits = Completed(Limits(own), general) with { Fuel = entry.Key };
            own.RefuseTheRest();
            if (!byFuel.TryAdd(entry.Key, limits))
            {
                reader.Refuse(entry, "is given twice, in another spelling.");
            }
        }

        reader.RefuseTheRest();
        if (fuel is null || byFuel.Count == 0)
        {
            return (general, byFuel);
        }

        if (!byFuel.TryGetValue(fuel, out EngineLimits? named))
        {
            reader.Refuse(reader.Table.Find("fuel")!, $"is \"{Excerpt.Of(fuel)}\", but there is no table [engine.{Excerpt.Of(fuel)}].");
            return (general, byFuel);
        }

        return (named, byFuel);
    }

    /// <summary>A fuel has a header of its own; a misspelt limit is written { ... } behind its key.</summary>
    private static bool IsFuelTable(SheetEntry entry) =>
        entry.Value is SheetTable { Inline: false } && !LimitKeys.Contains(entry.Key, StringComparer.Ordinal);

    private static readonly string[] LimitKeys =
        ["idle_rpm", "governed_rpm", "relief_drop_rpm", "stall_rpm", "stall_forward_rpm", "stall_reverse_rpm", "run_up_s"];

    private static EngineLimits Limits(TableReader reader)
    {
        Limit? stall = reader.Limit("stall_rpm", QuantityRange.Rpm);
        return new EngineLimits(
            IdleRpm: reader.Limit("idle_rpm", QuantityRange.Rpm),
            GovernedRpm: reader.Limit("governed_rpm", QuantityRange.Rpm),
            ReliefDropRpm: reader.Limit("relief_drop_rpm", QuantityRange.Rpm),
            StallForwardRpm: reader.Limit("stall_forward_rpm", QuantityRange.Rpm) ?? stall,
            StallReverseRpm: reader.Limit("stall_reverse_rpm", QuantityRange.Rpm) ?? stall,
            RunUpSeconds: reader.Limit("run_up_s", QuantityRange.Seconds));
    }

    private static EngineLimits Completed(EngineLimits own, EngineLimits general) => new(
        IdleRpm: own.IdleRpm ?? general.IdleRpm,
        GovernedRpm: own.GovernedRpm ?? general.GovernedRpm,
        ReliefDropRpm: own.ReliefDropRpm ?? general.ReliefDropRpm,
        StallForwardRpm: own.StallForwardRpm ?? general.StallForwardRpm,
        StallReverseRpm: own.StallReverseRpm ?? general.StallReverseRpm,
        RunUpSeconds: own.RunUpSeconds ?? general.RunUpSeconds);
}
