using System;

namespace LoggerBox.Benchmarks.Line;

/// <summary>A program pair that brings bytes from one pseudo-terminal to another.</summary>
internal interface ITransfer
{
    string Name { get; }

    /// <summary>Not installed: its column stays empty.</summary>
    bool IsThere { get; }

    /// <summary>How long it took until the receiver had everything and both ends were done; null: not within the limit, or not the same bytes.</summary>
    TimeSpan? Run(PacedLine line, int length, int seed, TimeSpan limit);
}
