using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Framing;

public sealed class Crc32Tests
{
    // Catalogue of parametrised CRC algorithms, entry CRC-32/ISO-HDLC: check value, and the residue after the message's own CRC
    // (register DEBB20E3, here with the final exclusive-or: 2144DF1C).
    [Fact]
    public void Check_value_of_the_catalogue() => Assert.Equal(0xCBF43926u, Crc(System.Text.Encoding.ASCII.GetBytes("123456789")));

    // The same catalogue, entry CRC-32/ISCSI.
    [Fact]
    public void Check_value_of_the_catalogue_for_whole_sessions() =>
        Assert.Equal(0xE3069283u, Crc32C.Of(System.Text.Encoding.ASCII.GetBytes("123456789"), 0, 9));

    // RFC 3720, appendix B.4: 32 bytes of zeros, of ones, and counting up.
    [Fact]
    public void Examples_of_rfc_3720()
    {
        byte[] counting = new byte[32];
        byte[] ones = new byte[32];
        for (int i = 0; i < 32; i++)
        {
            counting[i] = (byte)i;
            ones[i] = 0xFF;
        }

        Assert.Equal(0x8A9136AAu, Crc32C.Of(new byte[32], 0, 32));
        Assert.Equal(0x62A8AB43u, Crc32C.Of(ones, 0, 32));
        Assert.Equal(0x46DD794Eu, Crc32C.Of(counting, 0, 32));
    }

    [Fact]
    public void Only_the_other_polynomial_tells_two_records_of_one_length_apart()
    {
        byte[] first = Examples.Bytes(new EventRecord { Value = 1 });
        byte[] second = Examples.Bytes(new EventRecord { Value = 2 });
        Assert.Equal(Crc(first), Crc(second));
        Assert.NotEqual(Crc32C.Of(first, 0, first.Length), Crc32C.Of(second, 0, second.Length));
    }

    [Fact]
    public void Residue_of_the_catalogue()
    {
        byte[] message = [.. System.Text.Encoding.ASCII.GetBytes("123456789"), 0x26, 0x39, 0xF4, 0xCB];
        Assert.Equal(0xDEBB20E3u ^ 0xFFFFFFFFu, Crc(message));
    }

    [Fact]
    public void Ranges_chain_to_the_crc_of_the_whole()
    {
        byte[] message = System.Text.Encoding.ASCII.GetBytes("123456789");
        for (int cut = 0; cut <= message.Length; cut++)
        {
            uint first = Crc32.Append(Crc32.Start, message, 0, cut);
            Assert.Equal(0xCBF43926u, Crc32.Append(first, message, cut, message.Length - cut));
        }
    }

    private static uint Crc(byte[] message) => Crc32.Of(message, 0, message.Length);
}
