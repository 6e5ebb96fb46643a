using System;

namespace LoggerBox.Host.Traces;

/// <summary>The cells of one line, commas between them; a quoted cell may hold commas, not line breaks.</summary>
internal ref struct CsvCells(ReadOnlySpan<byte> line)
{
    private ReadOnlySpan<byte> rest = line;
    private bool ended;

    /// <summary>The cell without spaces around it and without its quotes (doubled quotes inside stay doubled).</summary>
    public ReadOnlySpan<byte> Current { get; private set; }

    public bool BrokenQuote { get; private set; }

    /// <returns>False after the last cell, or where a quote is broken.</returns>
    public bool Next()
    {
        if (ended)
        {
            return false;
        }

        ReadOnlySpan<byte> start = rest.TrimStart((byte)' ');
        if (start.StartsWith("\""u8))
        {
            return NextQuoted(start[1..]);
        }

        int comma = rest.IndexOf((byte)',');
        Current = (comma < 0 ? rest : rest[..comma]).Trim(" \t"u8);
        Advance(rest, comma);
        BrokenQuote = Current.Contains((byte)'"');
        return !BrokenQuote;
    }

    private bool NextQuoted(ReadOnlySpan<byte> inside)
    {
        int end = 0;
        while (true)
        {
            int quote = inside[end..].IndexOf((byte)'"');
            if (quote < 0)
            {
                BrokenQuote = true;
                return false;
            }

            end += quote;
            if (end + 1 < inside.Length && inside[end + 1] == '"')
            {
                end += 2;
                continue;
            }

            break;
        }

        Current = inside[..end].Trim(" \t"u8);
        ReadOnlySpan<byte> after = inside[(end + 1)..];
        int comma = after.IndexOf((byte)',');
        BrokenQuote = !(comma < 0 ? after : after[..comma]).Trim(" \t"u8).IsEmpty;
        Advance(after, comma);
        return !BrokenQuote;
    }

    private void Advance(ReadOnlySpan<byte> from, int comma)
    {
        ended = comma < 0;
        rest = ended ? default : from[(comma + 1)..];
    }
}
