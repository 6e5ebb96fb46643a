using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>Every figure counts the whole body of a record: times, count, modes and columns.</summary>
public sealed class BlockSizeTests
{
    private const int Seed = 1;

    [Theory]
    [InlineData(1, 0, 1.45)]
    [InlineData(2, 0, 1.87)]
    [InlineData(3, 0, 2.12)]
    [InlineData(2, 8, 2.02)]
    public void A_trace_of_ten_minutes_takes_no_more_bytes_a_set_than_it_did(double sigma, double ripple, double atMost)
    {
        double size = BlockSizes.Of(GeneratedTrace.Counts(sigma, ripple, Seed), GeneratedTrace.IntervalMicroseconds).BytesPerSet;
        Assert.True(size <= atMost, $"seed {Seed}: {size:F3} bytes a set, {atMost} allowed");
        Assert.True(size > GeneratedTrace.NoiseEntropy(sigma), $"seed {Seed}: {size:F3} bytes a set is less than the noise holds");
    }

    [Fact]
    public void Full_scale_noise_takes_no_more_than_its_values_and_eight_bytes_a_block()
    {
        BlockSizes sizes = BlockSizes.Of(GeneratedTrace.FullScaleNoise(Seed), GeneratedTrace.IntervalMicroseconds);
        Assert.Equal((SampleBlock.Capacity * Channel.Count * 2) + 8, sizes.Longest);
        Assert.True(sizes.BytesPerSet <= 8.07, $"{sizes.BytesPerSet:F4} bytes a set");
    }

    [Fact]
    public void Channels_without_a_reading_take_two_bytes_a_block()
    {
        short[] counts = GeneratedTrace.Counts(2, 0, Seed);
        double four = BlockSizes.Of(counts, GeneratedTrace.IntervalMicroseconds).BytesPerSet;
        for (int i = 0; i < counts.Length; i++)
        {
            counts[i] = i % Channel.Count == Channel.Main ? counts[i] : (short)SampleSet.Missing;
        }

        BlockSizes one = BlockSizes.Of(counts, GeneratedTrace.IntervalMicroseconds);
        Assert.True(one.BytesPerSet < (four / 4) + 0.15, $"{one.BytesPerSet:F3} bytes a set, {four:F3} with all four");
    }

    [Fact]
    public void Readings_that_come_and_go_cost_a_few_bytes_each_time()
    {
        short[] counts = GeneratedTrace.Counts(2, 0, Seed);
        long whole = BlockSizes.Of(counts, GeneratedTrace.IntervalMicroseconds).Bytes;
        const int Absences = 200;
        for (int n = 0; n < Absences; n++)
        {
            for (int set = n * 300; set < (n * 300) + 40; set++)
            {
                counts[(set * Channel.Count) + Channel.Clutch] = SampleSet.Missing;
            }
        }

        long broken = BlockSizes.Of(counts, GeneratedTrace.IntervalMicroseconds).Bytes;
        Assert.True(broken < whole + (Absences * 8), $"{broken} bytes, {whole} without absences");
    }
}
