using System.Text;
using LoggerBox.Protocol.Framing;
using Xunit;

namespace LoggerBox.Protocol.Tests.Framing;

public sealed class Crc32Tests
{
    // Catalogue of parametrised CRC algorithms, entry CRC-32/ISO-HDLC: check value, and the residue after the message's own CRC
    // (register DEBB20E3, here with the final exclusive-or: 2144DF1C).
    [Fact]
    public void Check_value_of_the_catalogue() => Assert.Equal(0xCBF43926u, Crc(Encoding.ASCII.GetBytes("123456789")));

    [Fact]
    public void Residue_of_the_catalogue()
    {
        byte[] message = [.. Encoding.ASCII.GetBytes("123456789"), 0x26, 0x39, 0xF4, 0xCB];
        Assert.Equal(0xDEBB20E3u ^ 0xFFFFFFFFu, Crc(message));
    }

    [Fact]
    public void Ranges_chain_to_the_crc_of_the_whole()
    {
        byte[] message = Encoding.ASCII.GetBytes("123456789");
        for (int cut = 0; cut <= message.Length; cut++)
        {
            uint first = Crc32.Append(Crc32.Start, message, 0, cut);
            Assert.Equal(0xCBF43926u, Crc32.Append(first, message, cut, message.Length - cut));
        }
    }

    private static uint Crc(byte[] message) => Crc32.Of(message, 0, message.Length);
}
