using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Link;

/// <summary>
/// The dialogue with one logger: the host asks, the logger answers. Every request is safe to repeat, so a lost frame costs only time,
/// and every wait ends, whatever comes down the line.
/// </summary>
public sealed class LoggerConnection
{
    /// <summary>Eight times what a logger can keep: one that claims more is broken, and would keep the shop waiting for ever.</summary>
    private const int MostSessions = 4096;

    // A damaged frame was most likely the answer: asked again at once. What sends nothing else is no logger, and gets no flood in return.
    private const int MostRepeatsAtDamage = 8;

    private readonly FrameLine line;
    private readonly LinkTiming timing;

    /// <param name="clock">For waits only; null: the system's.</param>
    public LoggerConnection(HostLine line, LinkTiming? timing = null, TimeProvider? clock = null)
    {
        this.line = new FrameLine(line, clock ?? TimeProvider.System);
        this.timing = timing ?? LinkTiming.Default;
    }

    public string Port => line.Port;

    /// <summary>The first request: who is there?</summary>
    /// <exception cref="UserErrorException">Nobody, noise, or a logger of a version that this program cannot understand.</exception>
    public HelloAnswer Hello()
    {
        HelloAnswer answer = new();
        Demand(new Hello { Version = LinkVersion.Current }, answer);
        if (answer.Version != LinkVersion.Current)
        {
            throw LinkErrors.OtherVersion(Port, answer.Version);
        }

        return answer.RecordVersion == RecordFormat.Version
            ? answer
            : throw LinkErrors.OtherRecords(Port, answer.RecordVersion, RecordFormat.Version);
    }

    /// <summary>All sessions of the logger, in the order in which it recorded them.</summary>
    public IReadOnlyList<SessionEntry> List()
    {
        List<SessionEntry> entries = [];
        SessionList page;
        do
        {
            // A new object for each page: the entries are kept.
            page = new SessionList();
            ushort first = (ushort)entries.Count;
            Demand(new List { FirstIndex = first }, page, () => page.FirstIndex == first);
            if (page.Total > MostSessions)
            {
                throw LinkErrors.TooManySessions(Port, page.Total, MostSessions);
            }

            entries.AddRange(page.Entries.AsSpan(0, page.Count));
        }
        while (page.Count > 0 && entries.Count < page.Total);
        return entries;
    }

    /// <summary>Has the logger compare a session with its own and note that it is stored. Null: it agrees.</summary>
    public RefusalReason? Confirm(uint session, uint length, uint crc)
    {
        Confirmed answer = new();
        return Ask(new Confirm { SessionNumber = session, Length = length, Crc = crc }, answer, () => answer.SessionNumber == session, timing.Check);
    }

    public void SendPlan(PlanRecord plan) => Demand(new SendPlan(plan), new PlanAnswer());

    public void SetClock(DateTimeOffset now) => Demand(new SetClock { UtcSeconds = (uint)now.ToUnixTimeSeconds() }, new ClockAnswer());

    /// <summary>What the logger holds for a pressure channel: 1 main, 2 clutch, 3 converter.</summary>
    public CalibrationAnswer GetCalibration(int channel) => DemandCalibration(new GetCalibration { Channel = (byte)channel }, channel);

    /// <summary>What it holds for main, clutch and converter, in this order.</summary>
    public IReadOnlyList<ChannelCalibration> PressureCalibrations() => [.. Enumerable.Range(Channel.Main, 3).Select(channel =>
    {
        var calibration = new ChannelCalibration();
        GetCalibration(channel).CopyTo(calibration);
        return calibration;
    })];

    /// <summary>Has the logger work by this calibration from its next session on. Returns what it holds now.</summary>
    public CalibrationAnswer SendCalibration(SendCalibration calibration) => DemandCalibration(calibration, calibration.Channel);

    /// <summary>Live readings until stopped.</summary>
    /// <param name="interval">Between two readings; a tenth of a second at least.</param>
    /// <param name="show">Gets each that arrives; the object is filled again afterwards.</param>
    /// <exception cref="UserErrorException">No reading came for too long, or the logger refused.</exception>
    public void Watch(TimeSpan interval, Action<LiveReadings> show, CancellationToken stop) =>
        new LiveWatch(line, interval, show).Run(timing.Silence, stop);

    /// <summary>Brings these ranges of a session across and hands over each piece that arrives, in any order.</summary>
    /// <param name="wanted">In order; at least one.</param>
    /// <param name="take">The object is filled again afterwards.</param>
    /// <exception cref="UserErrorException">Nothing new came for too long, or the logger refused.</exception>
    public void Fetch(uint session, IReadOnlyList<ByteRange> wanted, Action<Data> take) =>
        new RangeFetch(line, session, wanted, take).Run(timing.Silence);

    private CalibrationAnswer DemandCalibration(IMessage request, int channel)
    {
        CalibrationAnswer answer = new();
        Demand(request, answer, () => answer.Channel == channel);
        return answer;
    }

    private void Demand(IMessage request, IMessage answer, Func<bool>? isMine = null)
    {
        if (Ask(request, answer, isMine ?? (() => true), timing.Answer) is RefusalReason reason)
        {
            throw LinkErrors.Refused(Port, request.Code, reason);
        }
    }

    /// <summary>Fills the answer, or returns why the logger refuses; asks again while no answer comes.</summary>
    private RefusalReason? Ask(IMessage request, IMessage answer, Func<bool> isMine, TimeSpan limit)
    {
        Refusal refusal = new();
        int framesBefore = line.FramesHeard;
        long bytesBefore = line.BytesHeard;
        Deadline deadline = line.After(limit);
        for (int sent = 1; !deadline.IsOver; sent++)
        {
            line.Send(request);
            while (line.Next(deadline, out MessageCode code, damageEndsIt: sent <= MostRepeatsAtDamage))
            {
                if (code == answer.Code && answer.TryRead(line.Content) && isMine())
                {
                    line.Answered(deadline.Spent);
                    return null;
                }

                if (code == MessageCode.Refusal && refusal.TryRead(line.Content) && refusal.Request == request.Code)
                {
                    return refusal.Reason;
                }
            }
        }

        throw LinkErrors.Unanswered(line, request.Code, limit, bytesBefore, framesBefore);
    }
}
