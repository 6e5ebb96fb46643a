using System;
using System.IO;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A card's file in a reader that cannot give these bytes: bad sectors, or a card that is pulled.</summary>
internal sealed class FailingCard(byte[] bytes) : MemoryStream(bytes, writable: false)
{
    public Func<long, bool> Fails { get; set; } = _ => false;

    public int Reads { get; private set; }

    public override int Read(Span<byte> buffer)
    {
        Reads++;
        return Fails(Position) ? throw new IOException("Input/output error") : base.Read(buffer);
    }
}
