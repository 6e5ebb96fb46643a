using System;
using System.Collections.Generic;
using LoggerBox.Host.Traces;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Calibration;

/// <summary>What is to be calibrated, against what, and who answers for it.</summary>
/// <param name="Channels">1 main, 2 clutch, 3 converter, in the order in which they are done.</param>
/// <param name="Pascal">Zero first; empty: of each channel's own range.</param>
/// <param name="ClassPercent">Of the range; null: what the logger holds.</param>
/// <param name="Asks">A person answers; otherwise each pressure is waited for.</param>
internal sealed record CalibrationOrder(
    IReadOnlyList<int> Channels,
    IReadOnlyList<double> Pascal,
    PressureUnit Unit,
    string Reference,
    string Certificate,
    DateOnly Certified,
    DateOnly ReferenceDue,
    DateOnly Due,
    string By,
    IReadOnlyDictionary<int, string> Transducers,
    IReadOnlyDictionary<int, ChannelRange> Ranges,
    double? ClassPercent,
    TimeSpan Patience,
    bool Asks)
{
    /// <summary>As the logger keeps it.</summary>
    public string ReferenceOnTheLogger => $"{Reference}, {Certificate}";
}
