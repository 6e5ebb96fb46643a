using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using LoggerBox.Protocol.Framing;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>Job files taken apart and put together again by JOBFILE.md alone, with a CRC that agrees: for what a CRC does not catch.</summary>
internal sealed class JobFileText
{
    private const int HeaderLength = 12;

    public JobFileText(byte[] file)
    {
        Header = file[..HeaderLength];
        for (int at = HeaderLength; at < file.Length;)
        {
            int length = (int)BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(at + 1));
            Sections.Add((file[at], file[(at + 5)..(at + 5 + length)]));
            at += 5 + length;
        }

        Sections.RemoveAt(Sections.Count - 1);
    }

    public byte[] Header { get; }

    /// <summary>All but the end.</summary>
    public List<(byte Code, byte[] Content)> Sections { get; } = [];

    public int IndexOf(byte code) => Sections.FindIndex(section => section.Code == code);

    public void Replace(byte code, string old, string fresh)
    {
        int index = IndexOf(code);
        byte[] content = Sections[index].Content;
        int at = content.AsSpan().IndexOf(Value(old));
        Sections[index] = (code, [.. content[..at], .. Value(fresh), .. content[(at + Value(old).Length)..]]);
    }

    /// <param name="claim">What a section says of its length, where that is not the truth.</param>
    public byte[] ToBytes(Func<byte, uint>? claim = null)
    {
        using MemoryStream file = new();
        file.Write(Header);
        foreach ((byte code, byte[] content) in Sections.Append(((byte)255, [])))
        {
            byte[] length = new byte[4];
            uint truth = code == 255 ? 4 : (uint)content.Length;
            BinaryPrimitives.WriteUInt32LittleEndian(length, claim?.Invoke(code) is uint lie and > 0 ? lie : truth);
            file.WriteByte(code);
            file.Write(length);
            file.Write(content);
        }

        byte[] crc = new byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(crc, Crc32C.Of(file.ToArray(), 0, (int)file.Length));
        file.Write(crc);
        return file.ToArray();
    }

    private static byte[] Value(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        byte[] length = new byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(length, (uint)bytes.Length);
        return [.. length, .. bytes];
    }
}
