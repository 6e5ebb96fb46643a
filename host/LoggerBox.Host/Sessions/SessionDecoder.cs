using System.Collections.Generic;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Sessions;

/// <summary>
/// Reads a session's record bytes. Rubbish costs what it covers and is counted; a record that is not whole is never returned, and nothing is thrown.
/// </summary>
public sealed class SessionDecoder
{
    /// <summary>
    /// A day and night at 100 a second, 240 MB for who wants them all at once. A block of 128 equal sets takes 40 bytes: without a limit a session
    /// of some megabytes, made up or imported, would fill the memory. What is beyond counts as lost.
    /// </summary>
    public const int MostSampleSets = 10_000_000;

    /// <summary>One a second for a day and night: the most of each other kind of record.</summary>
    public const int MostOfAKind = 100_000;

    private readonly List<HoldRecord> holds = [];
    private readonly List<EngagementRecord> engagements = [];
    private readonly List<RunUpRecord> runUps = [];
    private readonly List<EventRecord> events = [];
    private readonly List<DropoutRecord> dropouts = [];
    private readonly List<BlockPlace> blocks = [];
    private readonly byte[] bytes;
    private readonly RecordWalk walk;
    private readonly GapFinding gaps = new();
    private SessionHeader? header;
    private PlanRecord? plan;
    private SessionEnd? end;
    private long lostRecords;
    private long unknownRecords;
    private long nextSequence;
    private long sampleSets;
    private long? lastSample;

    private SessionDecoder(byte[] bytes, bool checksBlocks)
    {
        this.bytes = bytes;
        walk = new RecordWalk(bytes, checksBlocks);
    }

    /// <summary>Reads everything once, every sample set too, so that what is damaged is known. The samples stay in the bytes until somebody looks.</summary>
    public static DecodedSession Decode(byte[] bytes) => new SessionDecoder(bytes, checksBlocks: true).Decode();

    /// <summary>The same for bytes that <see cref="Decode(byte[])"/> found undamaged before: the sample sets are not read again, which takes the most time.</summary>
    public static DecodedSession Reopen(byte[] bytes) => new SessionDecoder(bytes, checksBlocks: false).Decode();

    private DecodedSession Decode()
    {
        SessionHeader numbers = new();
        int damagedBytes = 0;
        while (walk.MoveNext())
        {
            if (nextSequence == 0)
            {
                numbers.SessionNumber = walk.Envelope.SessionNumber;
                numbers.BootCount = walk.Envelope.BootCount;
            }

            gaps.Lose(0, walk.DamagedBytes - damagedBytes);
            damagedBytes = walk.DamagedBytes;
            if (Continues(walk.Envelope, numbers) && !TryTake())
            {
                Lose(1);
            }
        }

        gaps.Lose(0, walk.UnfinishedBytes);

        RecordedSession session = new()
        {
            Header = header ?? numbers,
            Plan = plan,
            Holds = holds,
            Engagements = engagements,
            RunUps = runUps,
            Events = events,
            Dropouts = dropouts,
            End = end,
            Samples = new StoredSamples(bytes, blocks),
            Gaps = gaps.Finish(),
        };
        SessionDamage damage = new(lostRecords, (long)walk.DamagedBytes + walk.UnfinishedBytes, unknownRecords);
        return new DecodedSession(session, damage, header is not null, sampleSets, lastSample);
    }

    /// <summary>A record of another session, or one that came before, is not taken; records that were jumped over are counted as lost.</summary>
    private bool Continues(Envelope envelope, SessionHeader numbers)
    {
        bool same = envelope.SessionNumber == numbers.SessionNumber && envelope.BootCount == numbers.BootCount;
        if (!same || envelope.Sequence < nextSequence)
        {
            Lose(1);
            return false;
        }

        Lose(envelope.Sequence - nextSequence);
        nextSequence = envelope.Sequence + 1L;
        return true;
    }

    private void Lose(long records)
    {
        lostRecords += records;
        gaps.Lose(records, 0);
    }

    private bool TryTake()
    {
        switch (walk.Envelope.Code)
        {
            case RecordCode.SessionHeader:
                return TryTake(ref header) && Begins(header!);
            case RecordCode.Plan:
                return TryTake(ref plan);
            case RecordCode.SessionEnd:
                return TryTake(ref end) && Ends(end!);
            case RecordCode.SampleBlock:
                return TryTakeSamples();
            case RecordCode.Event:
                return TryTake(events);
            case RecordCode.Hold:
                return TryTake(holds);
            case RecordCode.Engagement:
                return TryTake(engagements);
            case RecordCode.RunUp:
                return TryTake(runUps);
            case RecordCode.Dropout:
                return TryTake(dropouts) && Drops(dropouts[^1]);
            default:
                unknownRecords++;
                return true;
        }
    }

    private bool Begins(SessionHeader record)
    {
        gaps.Begin(record);
        return true;
    }

    private bool Drops(DropoutRecord record)
    {
        gaps.Pass(record);
        return true;
    }

    private bool Ends(SessionEnd record)
    {
        gaps.Pass(record.Microseconds, record.Microseconds);
        return true;
    }

    private bool TryTake<T>(ref T? place)
        where T : class, IRecord, new()
    {
        T record = new();
        bool taken = walk.TryReadBody(record);
        place = taken ? record : place;
        return taken;
    }

    private bool TryTake<T>(List<T> list)
        where T : IRecord, new()
    {
        T record = new();
        bool taken = list.Count < MostOfAKind && walk.TryReadBody(record);
        if (taken)
        {
            list.Add(record);
        }

        return taken;
    }

    private bool TryTakeSamples()
    {
        if (walk.Block is not { } block || sampleSets > MostSampleSets - block.Count)
        {
            return false;
        }

        sampleSets += block.Count;
        if (block.Count > 0)
        {
            blocks.Add(block);
        }

        lastSample = block.Count == 0 || lastSample > block.LatestMicroseconds ? lastSample : block.LatestMicroseconds;
        gaps.Pass(block);
        return true;
    }
}
