using System;

namespace LoggerBox.Link.Tests.Line;

/// <summary>One kind of accident with a fixed chance for each byte, drawn as the number of bytes up to the next one.</summary>
internal sealed class Accident
{
    private readonly Random random;
    private readonly double rate;
    private long bytesLeft;

    public Accident(Random random, double rate)
    {
        this.random = random;
        this.rate = rate;
        bytesLeft = Draw();
    }

    public bool Happens()
    {
        if (bytesLeft-- > 0)
        {
            return false;
        }

        bytesLeft = Draw();
        return true;
    }

    private long Draw() => rate <= 0 ? long.MaxValue : (long)Math.Min(1e15, Math.Log(1 - random.NextDouble()) / Math.Log(1 - rate));
}

/// <summary>What becomes of each byte on a line.</summary>
internal sealed class LineFaults
{
    private const int BitsPerByte = 10;

    private readonly Random random;
    private readonly LineQuality quality;
    private readonly Accident hit;
    private readonly Accident drop;
    private readonly Accident duplicate;
    private readonly Accident burst;
    private long burstEnd;

    public LineFaults(LineQuality quality, Random random)
    {
        this.quality = quality;
        this.random = random;
        hit = new Accident(random, 1 - Math.Pow(1 - quality.BitErrorRate, BitsPerByte));
        drop = new Accident(random, quality.DropRate);
        duplicate = new Accident(random, quality.DuplicateRate);
        burst = new Accident(random, quality.BurstRate);
    }

    /// <summary>Bytes that were hit, lost, doubled or drowned so far.</summary>
    public long Count { get; private set; }

    /// <summary>How often the byte arrives, and as what.</summary>
    /// <param name="time">When it is on the wire, nanoseconds. A burst lasts as long as its bytes, whether any are sent meanwhile or not.</param>
    public int Pass(ref byte value, long time)
    {
        if (burst.Happens())
        {
            burstEnd = time + (quality.BurstLength * quality.NanosecondsPerByte);
        }

        int copies = drop.Happens() ? 0 : duplicate.Happens() ? 2 : 1;
        bool isHit = hit.Happens();
        if (time < burstEnd)
        {
            value = (byte)random.Next(256);
            isHit = true;
        }
        else if (isHit)
        {
            value ^= (byte)(1 << random.Next(8));
        }

        Count += isHit || copies != 1 ? 1 : 0;
        return copies;
    }
}
