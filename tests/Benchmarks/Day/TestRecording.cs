using LoggerBox.Capture;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Runs;

namespace LoggerBox.Benchmarks.Day;

/// <summary>One whole test on the simulated truck, recorded by the capture engine.</summary>
internal static class TestRecording
{
    private const int CardBytes = 2 << 20;

    public static byte[] Bytes(string cause, int seed)
    {
        SimulatedCauses.TryGet(cause, out SimulatedCause? known);
        SimulatedRun run = new(known!, seed);
        RecordLog log = new(new MemoryStore(CardBytes));
        log.Open();
        CaptureEngine engine = new(run.Board, log, new PlanRecord(), run.Header());
        run.RunToEnd(engine.Step);
        engine.End(SessionEndReason.Button, run.NowMicroseconds);
        LoggedSession session = log.Sessions[log.Sessions.Count - 1];
        byte[] bytes = new byte[session.Length];
        log.Read(session, 0, bytes, 0, bytes.Length);
        return bytes;
    }
}
