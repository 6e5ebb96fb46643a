using LoggerBox.Capture.Holds;
using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Tests.Holds.Runs;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Holds;

/// <summary>A hold that is measured waits until it is taken, which takes long where many have names: none that ends meanwhile may come over it.</summary>
public sealed class WaitingHoldTests
{
    private const int BinsOfAHold = 50;

    private readonly HoldFinder finder = new(FoundHolds.Header());
    private readonly Bin bin = new();
    private int bins;

    [Fact]
    public void A_third_hold_does_not_begin_over_two_that_wait()
    {
        TwoThatWait();
        for (int i = 0; i < BinsOfAHold && !finder.IsHeldUp; i++)
        {
            Add(800);
        }

        Assert.True(finder.IsHeldUp);
        Assert.False(finder.IsOpen);
        Assert.Equal(400, Settled());
        TakeAndMeasure();
        Assert.Equal(600, Settled());
        finder.Look();
        Assert.False(finder.IsHeldUp);
        Assert.True(finder.IsOpen && finder.JustOpened);
    }

    [Fact]
    public void Before_the_readings_of_a_hold_are_gone_the_one_before_it_is_asked_to_be_taken()
    {
        TwoThatWait();
        int until = 0;
        for (; until < 200 && !finder.MustBeTaken; until++)
        {
            Add(800 + (until % 2 * 100) + (until * 20));
        }

        Assert.InRange(until, 30, BinSpan.MostAfterKept);
        Assert.Equal(400, Settled());
        TakeAndMeasure();
        Assert.Equal(600, Settled());
    }

    // The first is measured and not taken, the second has ended.
    private void TwoThatWait()
    {
        for (int i = 0; i < 3 * BinsOfAHold; i++)
        {
            Add(i < BinsOfAHold ? 400 : 600);
            while (!finder.IsMeasured && finder.Advance())
            {
            }

            if (i > 2 * BinsOfAHold)
            {
                break;
            }
        }

        Add(700);
        for (int i = 0; i < 4; i++)
        {
            Add(800);
        }

        Assert.True(finder.IsMeasured && finder.IsMeasuring);
        Assert.False(finder.IsOpen);
    }

    private void TakeAndMeasure()
    {
        finder.Take();
        while (!finder.IsMeasured && finder.Advance())
        {
        }

        Assert.True(finder.IsMeasured);
    }

    private double Settled() => finder.Ended.Readings[Channel.Main].SettledHundredths / 100.0 / FoundHolds.CountsPerKilopascal;

    private void Add(int kilopascal)
    {
        for (int channel = 0; channel < Channel.Count; channel++)
        {
            int counts = kilopascal * FoundHolds.CountsPerKilopascal;
            bin.Means[channel] = channel == Channel.Main ? counts * 100 : Bin.NoMean;
            bin.Highest[channel] = bin.Lowest[channel] = counts;
        }

        bin.StartMicroseconds = bins++ * (long)Bin.Microseconds;
        finder.Take(bin);
        finder.Look();
    }
}
