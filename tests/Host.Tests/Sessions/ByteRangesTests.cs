using System;
using System.Linq;
using LoggerBox.Host.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Sessions;

public class ByteRangesTests
{
    [Theory]
    [InlineData(21)]
    [InlineData(22)]
    public void Ranges_in_any_order_agree_with_a_map_of_single_bytes(int seed)
    {
        const int Size = 64;
        Random random = new(seed);
        for (int round = 0; round < 200; round++)
        {
            ByteRanges ranges = new();
            bool[] here = new bool[Size];
            for (int i = 0; i < 8; i++)
            {
                int start = random.Next(Size);
                int end = random.Next(start, Size);
                ranges.Add(new ByteRange(start, end));
                Array.Fill(here, true, start, end - start);
            }

            bool[] holes = new bool[Size];
            foreach (ByteRange hole in ranges.HolesIn(new ByteRange(10, 50)))
            {
                Array.Fill(holes, true, (int)hole.Start, (int)hole.Length);
            }

            Assert.Equal(Enumerable.Range(0, Size).Select(i => i is >= 10 and < 50 && !here[i]), holes);
            Assert.True(ranges.All.Zip(ranges.All.Skip(1)).All(pair => pair.First.End < pair.Second.Start), $"seed {seed}, round {round}");
        }
    }
}
