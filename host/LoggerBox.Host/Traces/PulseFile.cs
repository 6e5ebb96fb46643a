using System;

namespace LoggerBox.Host.Traces;

/// <summary>A file of pickup edges: one time in seconds a line.</summary>
internal static class PulseFile
{
    /// <returns>Microseconds, strictly increasing.</returns>
    public static long[] Read(string path)
    {
        SourceLines lines = SourceLines.Open(path);
        long[] edges = new long[lines.AtMost];
        int count = 0;
        while (lines.Next())
        {
            long edge = TraceCells.Microseconds(lines.Current.Trim(" \t"u8), "the edge's time", lines);
            if (count > 0 && edge <= edges[count - 1])
            {
                string how = edge < edges[count - 1] ? "goes back" : "stands still";
                throw lines.Refused(FormattableString.Invariant($"time {how}: {edge / 1e6:0.000000} s after {edges[count - 1] / 1e6:0.000000} s; edges must come in order."));
            }

            edges[count++] = edge;
        }

        return count > 0 ? edges.AsSpan(0, count).ToArray() : throw lines.Refused("there are no edges in the file; it needs one time in seconds a line.");
    }
}
