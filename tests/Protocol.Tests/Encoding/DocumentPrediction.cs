using System;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>The predictions of PROTOCOL.md's table, one row each.</summary>
public sealed class DocumentPrediction
{
    private readonly int mode;
    private long level;
    private long slope;
    private int n;
    private int s;

    public DocumentPrediction(int mode, int first)
    {
        this.mode = mode is 2 or 3 or 4 ? mode : throw new ArgumentOutOfRangeException(nameof(mode));
        Begin(first);
    }

    public long Value { get; private set; }

    public static long Floor(long dividend, long divisor) => (long)Math.Floor((decimal)dividend / divisor);

    public void Learn(int v, bool jumped)
    {
        if (mode == 2 || (mode == 3 && jumped))
        {
            Begin(v);
            return;
        }

        if (mode == 3)
        {
            if (s < 4)
            {
                n++;
                s += n == 2 << s ? 1 : 0;
            }

            level += Floor((64L * v) - level, 1L << s);
            Value = Floor(level + 32, 64);
            return;
        }

        long f = level + slope;
        long d = (64L * v) - f;
        level = f + Floor(d, 2);
        slope += Floor(d, 8);
        Value = Floor(level + slope + 32, 64);
    }

    private void Begin(int v)
    {
        level = 64L * v;
        slope = 0;
        n = 1;
        s = 1;
        Value = v;
    }
}
