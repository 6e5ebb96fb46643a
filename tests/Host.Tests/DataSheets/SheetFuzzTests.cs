using System;
using System.Text;
using LoggerBox.Host.DataSheets;
using Xunit;

namespace LoggerBox.Host.Tests.DataSheets;

public class SheetFuzzTests
{
    private const int Cases = 1500;

    private static readonly string[] Pieces =
        ["[", "]", "{", "}", "=", "\n", "\"", "'", ".", ",", "nan", "-", "9999999999999999999", "[[pressure.at]]", "\0", "\u2028", "clutch.forward = 1", "also = { unit = \"bar\" }", "1e400", "[[[[[[[["];

    [Fact]
    public void A_mutated_sheet_is_read_or_refused_with_a_sentence()
    {
        int seed = Environment.TickCount;
        var random = new Random(seed);
        for (int i = 0; i < Cases; i++)
        {
            string text = Mutated(random);
            try
            {
                DataSheet sheet = DataSheetReader.Parse(text, "fuzz.toml");
                SheetPlan.Make(sheet);
            }
            catch (UserErrorException error)
            {
                Assert.StartsWith("fuzz.toml, line ", error.Message, StringComparison.Ordinal);
            }
            catch (Exception error)
            {
                Assert.Fail($"seed {seed}, case {i}: {error}\n{text}");
            }
        }
    }

    private static string Mutated(Random random)
    {
        var text = new StringBuilder(SampleSheet.Full);
        for (int change = random.Next(1, 5); change > 0; change--)
        {
            int at = random.Next(text.Length);
            switch (random.Next(4))
            {
                case 0:
                    text.Remove(at, Math.Min(text.Length - at, random.Next(1, 40)));
                    break;
                case 1:
                    text.Insert(at, Pieces[random.Next(Pieces.Length)]);
                    break;
                case 2:
                    text[at] = (char)random.Next(1, 400);
                    break;
                default:
                    text.Insert(at, text.ToString(random.Next(text.Length / 2), random.Next(1, 60)));
                    break;
            }
        }

        return text.ToString();
    }
}
