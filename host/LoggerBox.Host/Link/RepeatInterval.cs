using System;

namespace LoggerBox.Host.Link;

/// <summary>
/// How long to wait on a silent line before asking again: a few round trips of this line, longer each time that it did not help.
/// Asking too early costs a frame; asking too late costs the whole wait.
/// </summary>
internal sealed class RepeatInterval
{
    // Before the first answer nothing is known of the line. A USB bridge may hold bytes back for 16 ms each way, and then a greeting goes
    // twice, which costs 60 bytes; to wait for all such bridges would cost a fast line a twentieth of a whole session when one gets lost.
    private static readonly TimeSpan BeforeTheFirstAnswer = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(10);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(1);
    private const int RoundTrips = 4;

    private TimeSpan shortestRoundTrip = TimeSpan.MaxValue;
    private TimeSpan afterAnswer = BeforeTheFirstAnswer;

    public TimeSpan Current { get; private set; } = BeforeTheFirstAnswer;

    /// <summary>An answer came, so long after its request; the shortest counts, the others had work to do before.</summary>
    public void Answered(TimeSpan roundTrip)
    {
        shortestRoundTrip = roundTrip < shortestRoundTrip ? roundTrip : shortestRoundTrip;
        afterAnswer = Limit(shortestRoundTrip * RoundTrips);
        Current = afterAnswer;
    }

    /// <summary>The line speaks again.</summary>
    public void Reset() => Current = afterAnswer;

    public void Unanswered() => Current = Limit(Current * 2);

    private static TimeSpan Limit(TimeSpan interval) => interval < Shortest ? Shortest : interval > Longest ? Longest : interval;
}
