using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.TruckSimulator.Replay;

/// <summary>What another instrument recorded, row by row, in the logger's own units. All arrays have the same length.</summary>
/// <param name="Microseconds">Strictly increasing.</param>
/// <param name="Values">Indexed by <see cref="Channel"/>, then by row; <see cref="SampleSet.Missing"/> where there is no reading.</param>
/// <param name="OilTenthsCelsius">Missing where not recorded.</param>
/// <param name="Pressures">What the counts of main, clutch and converter are worth.</param>
/// <param name="HasGear">Whether the recording tagged gears at all.</param>
public sealed record Recording(
    long[] Microseconds,
    int[][] Values,
    Gear[] Gears,
    Step[] Steps,
    int[] OilTenthsCelsius,
    ChannelCalibration[] Pressures,
    bool HasGear);
