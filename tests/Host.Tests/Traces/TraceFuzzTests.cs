using System;
using System.IO;
using System.Linq;
using System.Text;
using LoggerBox.Host.Traces;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class TraceFuzzTests
{
    private const int Cases = 2000;

    private static readonly byte[] Whole = Encoding.UTF8.GetBytes(
        "time_s,rpm,main_mA,clutch_bar,converter_kPa,gear,step,oil_C,note\n"
        + string.Concat(Enumerable.Range(0, 12).Select(i => FormattableString.Invariant($"{i * 0.02:F3},{700 + i}.5,{4 + i},1.25,{i * 10},N,idle-N,80.1,\"a, b\"\n"))));

    private static readonly string[] Pieces = ["\"", ",", "\n", "\r", "#", "NaN", "1e309", "-", ".", "\uFEFF", "\0", "main_", "time_s", "99999999999999999999999", "=cmd()"];

    [Fact]
    public void A_mutated_file_is_read_or_refused_with_a_sentence()
    {
        int seed = Environment.TickCount;
        var random = new Random(seed);
        using var folder = new TemporaryFolder();
        string path = folder.File("fuzz.csv");
        var source = new TraceSource(path, RangeMain: ChannelRange.Parse("0..500psi"), PulsesPath: null);
        for (int i = 0; i < Cases; i++)
        {
            byte[] bytes = i % 8 == 0 ? Noise(random) : Mutated(random);
            File.WriteAllBytes(path, bytes);
            try
            {
                Trace trace = TraceReader.Read(i % 3 == 0 ? source with { PulsesPath = path, PulsesPerRevolution = 0.5 } : source);
                TraceCounts counts = TraceCounts.From(trace);
                Assert.All(counts.PressureCounts, column => Assert.Equal(trace.Count, column.Length));
            }
            catch (UserErrorException error)
            {
                Assert.StartsWith("fuzz.csv", error.Message, StringComparison.Ordinal);
            }
            catch (Exception error)
            {
                Assert.Fail($"seed {seed}, case {i}: {error}\n{Convert.ToHexString(bytes)}");
            }
        }
    }

    private static byte[] Noise(Random random)
    {
        byte[] bytes = new byte[random.Next(300)];
        random.NextBytes(bytes);
        return bytes;
    }

    private static byte[] Mutated(Random random)
    {
        var bytes = Whole.ToList();
        for (int change = random.Next(1, 4); change > 0; change--)
        {
            int at = random.Next(bytes.Count);
            switch (random.Next(3))
            {
                case 0:
                    bytes.RemoveRange(at, Math.Min(bytes.Count - at, random.Next(1, 30)));
                    break;
                case 1:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(Pieces[random.Next(Pieces.Length)]));
                    break;
                default:
                    bytes[at] = (byte)random.Next(256);
                    break;
            }
        }

        return [.. bytes];
    }
}
