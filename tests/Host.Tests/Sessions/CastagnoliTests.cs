using System;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Framing;
using Xunit;

namespace LoggerBox.Host.Tests.Sessions;

public sealed class CastagnoliTests
{
    // Catalogue of parametrised CRC algorithms, entry CRC-32/ISCSI; RFC 3720, appendix B.4: 32 bytes of zeros, of ones, and counting up.
    [Fact]
    public void Check_value_of_the_catalogue_and_examples_of_rfc_3720()
    {
        Assert.Equal(0xE3069283u, Castagnoli.Of("123456789"u8));
        Assert.Equal(0x8A9136AAu, Castagnoli.Of(new byte[32]));
        Assert.Equal(0x62A8AB43u, Castagnoli.Of([.. Enumerable.Repeat((byte)0xFF, 32)]));
        Assert.Equal(0x46DD794Eu, Castagnoli.Of([.. Enumerable.Range(0, 32).Select(i => (byte)i)]));
    }

    [Fact]
    public void It_is_what_the_logger_computes_whatever_the_length_and_the_cut()
    {
        const int Seed = 3;
        Random random = new(Seed);
        for (int length = 0; length < 300; length++)
        {
            byte[] bytes = new byte[length];
            random.NextBytes(bytes);
            int cut = random.Next(length + 1);
            uint chained = Castagnoli.Append(Castagnoli.Append(Castagnoli.Start, bytes.AsSpan(0, cut)), bytes.AsSpan(cut));
            Assert.True(Crc32C.Of(bytes, 0, length) == chained, $"seed {Seed}, {length} bytes cut at {cut}");
        }
    }
}
