using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture;
using LoggerBox.Capture.Board;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Operator;
using LoggerBox.TruckSimulator.Runs;

namespace LoggerBox.Campaign;

/// <summary>
/// One whole job, recorded twice by the logger's own engine, once with the instruments as they are and once with perfect ones, each judged
/// from its record bytes.
/// </summary>
/// <param name="Seen">What the technician gets.</param>
/// <param name="True">The same without noise or error of the instruments.</param>
/// <param name="Truth">What was really so.</param>
internal sealed record Measurement(Judgement Seen, Judgement True, TrueReadings Truth)
{
    private const int CardBytes = 2 << 20;

    public static Measurement Take(FittedTruck fitted, JobHabits habits, int seed, DataSheet sheet)
    {
        var run = new SimulatedRun(fitted, habits, seed, withPerfectBoard: true);
        var seen = new Recorder(run, run.Board, sheet);
        var perfect = new Recorder(run, run.PerfectBoard!, sheet);
        var truth = new TrueReadings();
        run.RunToEnd(now =>
        {
            truth.Add(run.Truth);
            seen.Engine.Step(now);
            perfect.Engine.Step(now);
        });
        var facts = new JobFacts(AltitudeMetres: fitted.AltitudeMetres);
        return new Measurement(seen.End(run.NowMicroseconds, sheet, facts), perfect.End(run.NowMicroseconds, sheet, facts), truth);
    }

    private sealed class Recorder
    {
        private readonly RecordLog _log = new(new MemoryStore(CardBytes));

        public Recorder(SimulatedRun run, IBoard board, DataSheet sheet)
        {
            _log.Open();
            SessionHeader header = run.Header();
            Engine = new CaptureEngine(board, _log, SheetPlan.Make(sheet), header);
        }

        public CaptureEngine Engine { get; }

        public Judgement End(long now, DataSheet sheet, JobFacts facts)
        {
            Engine.End(SessionEndReason.Button, now);
            LoggedSession session = _log.Sessions[_log.Sessions.Count - 1];
            byte[] bytes = new byte[session.Length];
            _log.Read(session, 0, bytes, 0, bytes.Length);
            IReadOnlyList<RecordedSession> sessions = [SessionDecoder.Decode(bytes).Session];
            return Judge.Of(sessions, sheet, facts, sheet.Unit);
        }
    }
}
