using System;

namespace LoggerBox.Benchmarks.Line;

/// <summary>A program pair that brings bytes from one pseudo-terminal to another.</summary>
internal interface ITransfer
{
    string Name { get; }

    /// <summary>Not installed: its column stays empty.</summary>
    bool IsThere { get; }

    /// <summary>True when the receiver had the same bytes, and both ends were done, within the limit.</summary>
    bool Run(PacedLine line, int length, int seed, TimeSpan limit);
}
