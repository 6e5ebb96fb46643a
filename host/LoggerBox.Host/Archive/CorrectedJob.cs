using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace LoggerBox.Host.Archive;

/// <summary>A work order as it stands after its corrections; what was written first stays in the archive.</summary>
internal static class CorrectedJob
{
    public static Job Of(Job asWritten, IReadOnlyList<Correction> corrections) =>
        corrections.Aggregate(asWritten with { AsWritten = asWritten }, With) with { Corrections = corrections };

    /// <summary>What stands now in a field; null: no work order has such a field.</summary>
    public static string? Value(Job job, string field) => field switch
    {
        JobField.Truck => job.Details.Truck,
        JobField.Serial => job.Details.Serial,
        JobField.Hours => job.Details.HourMeter?.ToString(CultureInfo.InvariantCulture) ?? "",
        JobField.Complaint => job.Details.Complaint,
        JobField.Cause => job.Cause,
        JobField.Correction => job.Correction,
        _ => null,
    };

    // A field of a later program is kept, and changes nothing here.
    private static Job With(Job job, Correction correction) => correction.Field switch
    {
        JobField.Truck => job with { Details = job.Details with { Truck = correction.Value } },
        JobField.Serial => job with { Details = job.Details with { Serial = correction.Value } },
        JobField.Hours when double.TryParse(correction.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double hours) && double.IsFinite(hours) =>
            job with { Details = job.Details with { HourMeter = hours } },
        JobField.Complaint => job with { Details = job.Details with { Complaint = correction.Value } },
        JobField.Cause => job with { Cause = correction.Value },
        JobField.Correction => job with { Correction = correction.Value },
        _ => job,
    };
}
