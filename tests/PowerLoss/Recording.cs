using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.PowerLoss;

/// <summary>
/// Drives the real log on a simulated card, and keeps the book of what each returned call has promised. Every write of the card becomes a
/// step that faults can be put into.
/// </summary>
public sealed class Recording
{
    private readonly RecordWriter writer = new();
    private readonly RecordLog log;
    private readonly Oracle? oracle;
    private readonly List<Step> steps = [];
    private Ledger ledger;
    private ushort bootCount;
    private uint sequence;
    private uint noted;

    public Recording(Card card, RecordLog? log = null, Ledger? known = null)
    {
        Card = card;
        this.log = log ?? new RecordLog(card);
        ledger = known ?? new Ledger();
        oracle = known is null ? new Oracle() : null;
    }

    public Card Card { get; }

    public IReadOnlyList<Step> Steps => steps;

    public Ledger Ledger => ledger;

    public bool IsFull => log.IsFull;

    private Promise Current => ledger.Sessions[^1];

    /// <summary>Power comes back: the log is opened again by the next start of the logger.</summary>
    public void Start(int start)
    {
        bootCount = (ushort)start;
        Card.Recover(log);
    }

    public bool Begin(string plan)
    {
        SessionHeader header = new() { LoggerId = 7, BootCount = bootCount, SampleIntervalMicroseconds = 20_000, PlanName = plan };
        uint[] known = [.. Enumerable.Range(0, log.Sessions.Count).Select(i => log.Sessions[i].Number)];
        return Do(() => log.BeginSession(header), () =>
        {
            if (log.Sessions.Count <= known.Length)
            {
                Forget(known);
            }

            // A number that was spoiled before it was safe, or of which the card kept nothing, can be given again, in another start.
            ledger.Sessions.RemoveAll(session => session.Number == header.SessionNumber && session.MayMiss(0, session.Sure));
            sequence = 0;
            ledger.Sessions.Add(new Promise { Number = header.SessionNumber, BootCount = bootCount });
            Give(header);
            MakeSure();
        });
    }

    public bool Append(IRecord record) => Do(() => log.Append(record), () =>
    {
        Give(record);
        if (record.Code == RecordCode.SampleBlock)
        {
            MakeSure();
        }
    });

    public bool End(long microseconds)
    {
        SessionEnd end = new() { Microseconds = microseconds, Reason = SessionEndReason.Button };
        bool full = log.IsFull;
        return Do(() => log.EndSession(end), () =>
        {
            if (full)
            {
                Give(new DropoutRecord { FromMicroseconds = microseconds, ToMicroseconds = microseconds, Reason = DropoutReason.StoreFull });
            }

            Give(end);
            MakeSure();
            Current.SureEnded = true;
            Current.MayBeEnded = true;
        });
    }

    public bool Confirm(uint number) => Do(() => log.Confirm(log.Sessions.Find(number)!, 0), () =>
    {
        noted = number;
        ledger.Find(number)!.SureConfirmed = true;
        ledger.Find(number)!.MayBeConfirmed = true;
    });

    private bool Do(Func<bool> call, Action effect)
    {
        Ledger before = ledger;
        ledger = ledger.Copy();
        Card.Writes.Clear();
        if (!call())
        {
            ledger = before;
            return false;
        }

        effect();
        Ledger during = Ledger.During(before, ledger);
        AddSteps(during);
        JudgeWithoutRestart();
        return true;
    }

    // On a card without faults: a logger sends what it has just recorded.
    private void JudgeWithoutRestart()
    {
        if (oracle?.Judge(log, ledger) is string wrong)
        {
            throw new InvalidOperationException($"Before any restart: {wrong}");
        }
    }

    // Calls that write twice have filled the first block: the bytes of a session follow each other.
    private void AddSteps(Ledger during)
    {
        foreach (CardWrite write in Card.Writes)
        {
            PageHeader first = new();
            PageHeader last = new();
            int page = write.Offset / Card.Page;
            int count = write.New.Length / Card.Page;
            bool known = first.TryRead(write.New, 0, page) && last.TryRead(write.New, (count - 1) * Card.Page, page + count - 1);
            int start = known ? (int)first.SessionOffset : 0;
            int end = known ? (int)last.SessionOffset + last.Used : 0;
            steps.Add(new Step(write, during, ledger, first.SessionNumber, start, end, first.Kind == PageKind.Note ? noted : 0, first.Generation, bootCount));
        }
    }

    private void Give(IRecord record)
    {
        int length = writer.Write(record, Current.Number, bootCount, sequence++);
        Current.Give(writer.Bytes, length);
    }

    private void MakeSure() => Current.Sure = Current.Possible;

    // The log was begun again, over the sessions that it knew. It may only give up what the host has.
    private void Forget(uint[] known)
    {
        if (ledger.Sessions.Exists(session => known.Contains(session.Number) && session.Sure > 0 && !session.MayBeConfirmed))
        {
            throw new InvalidOperationException("A session that the host does not have was given up.");
        }

        ledger.Sessions.RemoveAll(session => known.Contains(session.Number));
    }
}
