using System;
using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.PowerLoss;

/// <summary>
/// How many sample sets a cut costs: a session goes through the recorder set by set, power fails after each of them and at every byte of each
/// write, and the sets that the recovered log gives out are counted against those that were handed over.
/// </summary>
public sealed class LossAfterCuts
{
    private const int Sets = 4000;
    private const int Interval = 20_000;
    private const int Pages = 256;

    private readonly Card card = new(Pages);
    private readonly Card cut = new(Pages);
    private readonly RecordLog recovered;
    private readonly byte[] bytes = new byte[Pages * Card.Page];
    private readonly SampleBlock block = new();
    private long lostBetweenSets;

    private LossAfterCuts() => recovered = new RecordLog(cut);

    /// <summary>The most that any cut cost.</summary>
    public int Most { get; private set; }

    /// <summary>What a cut between two sets, so at a moment like any other, cost on average.</summary>
    public double Mean => lostBetweenSets / (double)Sets;

    public long States { get; private set; }

    public static LossAfterCuts Measure(int seed)
    {
        LossAfterCuts loss = new();
        loss.Record(new Random(seed));
        return loss;
    }

    private void Record(Random chance)
    {
        RecordLog log = new(card);
        log.Open();
        log.BeginSession(new SessionHeader { BootCount = 1, SampleIntervalMicroseconds = Interval });
        SampleRecorder recorder = new(log, Interval);
        SampleSet sample = new();
        card.Image.CopyTo(cut.Image, 0);
        for (int appended = 1; appended <= Sets; appended++)
        {
            // Now and then a set is late: its block ends early and a dropout stands behind it.
            sample.Microseconds += chance.Next(400) == 0 ? 3 * Interval : Interval;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = chance.Next(2000, 2008);
            }

            card.Writes.Clear();
            recorder.Add(sample);
            recorder.Advance();
            card.Writes.ForEach(write => CutInside(write, appended));
            lostBetweenSets += Lost(appended);
        }
    }

    private void CutInside(CardWrite write, int appended)
    {
        for (int done = 0; done < write.New.Length; done++)
        {
            Lost(appended);
            cut.Image[write.Offset + done] = write.New[done];
        }
    }

    private int Lost(int appended)
    {
        cut.Recover(recovered);
        int lost = appended - SetsOf(recovered.Sessions.Last!);
        Most = Math.Max(Most, lost);
        States++;
        return lost;
    }

    private int SetsOf(LoggedSession session)
    {
        int length = recovered.Read(session, 0, bytes, 0, bytes.Length);
        RecordScan scan = new(bytes, 0, length);
        int sets = 0;
        while (scan.MoveNext())
        {
            sets += scan.TryReadBody(block) ? block.Count : 0;
        }

        return sets;
    }
}
