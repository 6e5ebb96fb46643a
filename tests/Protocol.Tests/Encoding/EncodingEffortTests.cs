using System;
using System.Reflection;
using LoggerBox.Protocol.Records;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>What one set costs the logger: instructions and memory.</summary>
public sealed class EncodingEffortTests(ITestOutputHelper output)
{
    private const int Seed = 11;

    // As many as the logger writes at the most with a set that brings nothing else.
    private const int ValuesASet = 27;

    // A debug build carries out more of them than the logger's.
#if DEBUG
    private const int MostInstructionsOfAnAdd = 7_700;
#else
    private const int MostInstructionsOfAnAdd = 6_000;
#endif

    [Fact]
    public void No_set_takes_more_than_a_fixed_number_of_instructions_whatever_the_values_are()
    {
        CountedBlock block = new();
        Random random = new(Seed);
        short[] generated = GeneratedTrace.Counts(2, 0, Seed);
        for (int n = 0; n < 300; n++)
        {
            block.Run(n < 100 ? generated.AsSpan(n * 512, 512).ToArray() : RandomBlocks.Counts(random));
        }

        output.WriteLine($"instructions of a set: most {block.MostOfAnAdd}, mean {block.MeanOfAnAdd}, {block.MeanOfAnAdd / Channel.Count} a value");
        Assert.InRange(block.MostOfAnAdd, 1, MostInstructionsOfAnAdd);
    }

    [Fact]
    public void Filling_encoding_and_reading_blocks_allocates_nothing()
    {
        short[] counts = GeneratedTrace.Counts(2, 8, Seed);
        byte[] body = new byte[RecordFormat.MaxBody];
        ByteWriter writer = new(body);
        ByteReader reader = new(body);
        SampleBlock block = new();
        SampleBlock read = new();
        SampleSet sample = new();
        int blocks = 0;
        Assert.Equal(0, Allocated());
        Assert.Equal(2 * (GeneratedTrace.Sets / SampleBlock.Capacity), blocks);

        long Allocated()
        {
            Pass();
            long before = GC.GetAllocatedBytesForCurrentThread();
            Pass();
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        void Pass()
        {
            for (int i = 0; i < GeneratedTrace.Sets; i++)
            {
                sample.Microseconds = i * (long)GeneratedTrace.IntervalMicroseconds;
                for (int c = 0; c < Channel.Count; c++)
                {
                    sample.Values[c] = counts[(i * Channel.Count) + c];
                }

                if (!block.TryAdd(sample))
                {
                    writer.Restart(0, body.Length);
                    block.Write(writer);
                    reader.Restart(0, writer.Position);
                    blocks += read.TryRead(reader) ? 1 : 0;
                    block.Begin(GeneratedTrace.IntervalMicroseconds);
                    block.TryAdd(sample);
                }
            }

            block.Begin(GeneratedTrace.IntervalMicroseconds);
        }
    }

    /// <summary>A block of the counted assembly, filled as the recorder does it.</summary>
    private sealed class CountedBlock
    {
        private readonly CountedInstructions counted = new();
        private readonly Action<uint> begin;
        private readonly MethodInfo tryAdd;
        private readonly Func<int, int> encode;
        private readonly object block;
        private readonly object sample;
        private readonly int[] values;
        private readonly FieldInfo microseconds;
        private long adds;
        private long all;

        public CountedBlock()
        {
            Type type = counted.Assembly.GetType(typeof(SampleBlock).FullName!)!;
            Type sampleType = counted.Assembly.GetType(typeof(SampleSet).FullName!)!;
            block = Activator.CreateInstance(type)!;
            sample = Activator.CreateInstance(sampleType)!;
            values = (int[])sampleType.GetField(nameof(SampleSet.Values))!.GetValue(sample)!;
            microseconds = sampleType.GetField(nameof(SampleSet.Microseconds))!;
            begin = type.GetMethod(nameof(SampleBlock.Begin))!.CreateDelegate<Action<uint>>(block);
            tryAdd = type.GetMethod(nameof(SampleBlock.TryAdd))!;
            encode = type.GetMethod(nameof(SampleBlock.Encode))!.CreateDelegate<Func<int, int>>(block);
        }

        public long MostOfAnAdd { get; private set; }

        public long MeanOfAnAdd => all / adds;

        public void Run(short[] counts)
        {
            begin(10_000);
            for (int i = 0; i < counts.Length / Channel.Count; i++)
            {
                microseconds.SetValue(sample, i * 10_000L);
                for (int c = 0; c < Channel.Count; c++)
                {
                    int stored = counts[(i * Channel.Count) + c];
                    values[c] = c == Channel.Speed && stored != SampleSet.Missing ? stored + SampleBlock.SpeedMiddleTenths : stored;
                }

                long cost = counted.Of(() => Assert.Equal(true, tryAdd.Invoke(block, [sample]))) + counted.Of(() => encode(ValuesASet));
                MostOfAnAdd = Math.Max(MostOfAnAdd, cost);
                (adds, all) = (adds + 1, all + cost);
            }
        }
    }
}
