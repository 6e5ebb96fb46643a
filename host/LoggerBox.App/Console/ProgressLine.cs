using System;
using System.Diagnostics;
using System.IO;
using System.Threading;

namespace LoggerBox.App.Console;

/// <summary>
/// How far something long is, on standard error: on a terminal one line that is drawn again and wiped at the end, else a plain line now and
/// then. What is done within a second says nothing.
/// </summary>
internal sealed class ProgressLine
{
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan BetweenDrawings = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan BetweenLines = TimeSpan.FromSeconds(5);

    // One column less than the narrowest terminal: a line that is full wraps, and could not be wiped.
    private const int Widest = 79;

    private const string WipeLine = "\r\u001b[K";

    private readonly Lock gate = new();
    private readonly TextWriter error;
    private readonly bool redraws;
    private readonly Func<TimeSpan> clock;

    private string? what;
    private TimeSpan began;
    private long atBeginning;
    private TimeSpan? shown;
    private bool isDrawn;

    /// <param name="redraws">A person looks at it, and its cursor can be moved.</param>
    /// <param name="clock">Time that only goes on; null for this computer's.</param>
    public ProgressLine(TextWriter error, bool redraws, Func<TimeSpan>? clock = null)
    {
        this.error = error;
        this.redraws = redraws;
        long start = Stopwatch.GetTimestamp();
        this.clock = clock ?? (() => Stopwatch.GetElapsedTime(start));
    }

    /// <param name="work">What is being done; another one begins its own time.</param>
    /// <param name="isBytes">Counted in bytes, with a rate; else a share is told.</param>
    public void Show(string work, long done, long whole, bool isBytes = false)
    {
        lock (gate)
        {
            TimeSpan since = Since(work, done);
            double rate = since > TimeSpan.Zero ? (done - atBeginning) / since.TotalSeconds : 0;
            double? left = rate > 0 ? (whole - done) / rate : null;
            DrawIfDue(since, () => isBytes ? ProgressMessages.Bytes(work, done, whole, rate, left) : ProgressMessages.Share(work, done, whole, left));
        }
    }

    /// <summary>Of work that cannot tell how far it is: for how long it goes on.</summary>
    public void Show(string work)
    {
        lock (gate)
        {
            TimeSpan since = Since(work, 0);
            DrawIfDue(since, () => ProgressMessages.Elapsed(work, since.TotalSeconds));
        }
    }

    /// <summary>Does such work, and shows meanwhile that it goes on.</summary>
    public T During<T>(string what, Func<T> work)
    {
        Show(what);
        try
        {
            TimeSpan between = redraws ? BetweenDrawings : BetweenLines;
            using var ticks = new Timer(_ => Show(what), null, between, between);
            return work();
        }
        finally
        {
            Wipe();
        }
    }

    /// <summary>What was done is done, or something else is to be said on the same terminal.</summary>
    public void Wipe()
    {
        lock (gate)
        {
            what = null;
            if (isDrawn)
            {
                error.Write(WipeLine);
                isDrawn = false;
            }
        }
    }

    private TimeSpan Since(string work, long done)
    {
        if (work != what)
        {
            (what, began, atBeginning, shown) = (work, clock(), done, null);
        }

        return clock() - began;
    }

    private void DrawIfDue(TimeSpan since, Func<string> words)
    {
        TimeSpan now = began + since;
        if (since >= Quiet && (shown is not TimeSpan last || now - last >= (redraws ? BetweenDrawings : BetweenLines)))
        {
            shown = now;
            string line = words();
            Draw(line.Length > Widest ? line[..Widest] : line);
        }
    }

    private void Draw(string line)
    {
        if (redraws)
        {
            error.Write(WipeLine + line);
            isDrawn = true;
        }
        else
        {
            error.WriteLine(line);
        }
    }
}
