using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Archive;

/// <summary>What a count of one pressure channel was found to be worth, and who says so.</summary>
/// <param name="Channel">1 main, 2 clutch, 3 converter.</param>
/// <param name="Transducer">Type and number.</param>
/// <param name="Reference">The dead-weight tester or master gauge that it was compared with.</param>
/// <param name="Certificate">The reference's certificate, of the day <paramref name="CertifiedOn"/>, good until <paramref name="ReferenceDue"/>.</param>
/// <param name="Due">When this channel wants it again.</param>
/// <param name="Points">What was read: hundredths of a count at a pressure in pascal.</param>
public sealed record ArchivedCalibration(
    uint LoggerId,
    int Channel,
    int ZeroCounts,
    int SpanCounts,
    int SpanPascal,
    int AccuracyPascal,
    string Transducer,
    string Reference,
    string Certificate,
    DateOnly? CertifiedOn,
    DateOnly? ReferenceDue,
    DateOnly? Due,
    string By,
    string Points,
    DateTimeOffset Made)
{
    /// <summary>This channel of this logger works by these very figures.</summary>
    public bool IsOf(uint loggerId, int channel, ChannelCalibration held)
    {
        ArgumentNullException.ThrowIfNull(held);
        return LoggerId == loggerId && Channel == channel && ZeroCounts == held.ZeroCounts && SpanCounts == held.SpanCounts && SpanPascal == held.SpanPascal;
    }

    /// <summary>The points as one text, so that they travel and stay as they were read.</summary>
    public static string PointsOf(IEnumerable<(int Hundredths, int Pascal)> points) =>
        string.Join(';', points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.Hundredths} {point.Pascal}")));
}
