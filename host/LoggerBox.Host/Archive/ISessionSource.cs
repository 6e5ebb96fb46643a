using System;
using System.Collections.Generic;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>Where recorded sessions come from: a logger at the end of its cable, or the card out of it.</summary>
public interface ISessionSource
{
    /// <summary>The port, or the card's folder: what messages name and a session's row keeps.</summary>
    string Name { get; }

    /// <summary>Hands over the bytes of these ranges of a session, in pieces, in any order. A piece is good during the call only.</summary>
    /// <exception cref="UserErrorException">Not all of them came; what did was handed over.</exception>
    void Read(uint session, IReadOnlyList<ByteRange> wanted, Action<long, ReadOnlySpan<byte>> take);

    /// <summary>Compares a whole session of the archive with the one of the same numbers and length that is here.</summary>
    /// <param name="content">Loads the archive's bytes, for a source that compares more than the CRC.</param>
    Agreement Compare(ArchivedSession row, Func<byte[]> content);
}

public enum Agreement
{
    /// <summary>The same content, and the logger has noted that it is stored.</summary>
    Confirmed,

    /// <summary>The same content; the logger does not know yet that it is stored.</summary>
    Same,

    /// <summary>Another session, or other bytes of the same.</summary>
    Other,
}
