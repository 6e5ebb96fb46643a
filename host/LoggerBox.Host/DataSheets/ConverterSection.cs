namespace LoggerBox.Host.DataSheets;

/// <summary>
/// [converter], optional: what the heat of a stall is computed from, never a limit. The capacity factor at stall is the engine speed over the
/// square root of the torque that the pump takes, in the unit printed.
/// </summary>
/// <param name="CapacityFactor">rpm / sqrt(N m).</param>
/// <param name="OilKilograms">Oil in transmission and converter; null: no temperature rise is given.</param>
/// <param name="MetalKilograms">Metal that warms with it.</param>
public sealed record ConverterData(double CapacityFactor, double? OilKilograms, double? MetalKilograms);

internal static class ConverterSection
{
    /// <summary>N m in a foot-pound (NIST SP 811).</summary>
    private const double NewtonMetre = 1.355818;

    /// <summary>Kilograms in a litre of warm transmission oil: 860 kg/m3 at 15 °C, about 820 at 80 °C (common practice).</summary>
    private const double OilDensity = 0.82;

    private static readonly QuantityRange Capacity = new("rpm per root of torque", 10, 1000);
    private static readonly QuantityRange Litres = new("litres", 1, 200);
    private static readonly QuantityRange Kilograms = new("kilograms", 1, 1000);

    public static ConverterData? Read(TableReader? reader)
    {
        if (reader is null)
        {
            return null;
        }

        double? metric = reader.Number("k_rpm_per_sqrt_nm", Capacity);
        double? imperial = reader.Number("k_rpm_per_sqrt_lbft", Capacity);
        double? litres = reader.Number("oil_l", Litres);
        double? metal = reader.Number("metal_kg", Kilograms);
        bool both = reader.Table.Find("k_rpm_per_sqrt_nm") is not null && reader.Table.Find("k_rpm_per_sqrt_lbft") is not null;
        bool none = reader.Table.Find("k_rpm_per_sqrt_nm") is null && reader.Table.Find("k_rpm_per_sqrt_lbft") is null;
        if (both || none)
        {
            reader.Findings.Error(reader.Table.Line, "[converter] needs one capacity factor at stall; write k_rpm_per_sqrt_nm = ... or k_rpm_per_sqrt_lbft = ..., in the unit printed.");
        }

        reader.RefuseTheRest();
        double? factor = metric ?? (imperial / System.Math.Sqrt(NewtonMetre));
        return factor is double known ? new ConverterData(known, litres * OilDensity, metal) : null;
    }
}
