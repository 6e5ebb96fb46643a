using System;
using System.Linq;
using LoggerBox.Capture;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Demo;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Runs;

namespace LoggerBox.App.Simulation;

/// <summary>
/// The logger's own capture engine and record log, clipped to an invented truck. The same cause and seed record the same bytes on a
/// fresh card, whoever asks and whenever.
/// </summary>
internal sealed class VirtualLogger
{
    public const uint LoggerId = 0x5E1F0001;

    private readonly SimulatedRun run;
    private readonly SessionHeader header;
    private readonly CaptureEngine engine;
    private uint secondsAtStart;
    private bool ended;

    public VirtualLogger(SimulatedCause cause, int seed, IRecordStore card, VirtualSettings settings)
    {
        Settings = settings;
        PlanRecord plan = settings.Plan ?? SheetPlan.Make(Sheet);
        Log = new RecordLog(card);
        Log.Open();
        run = new SimulatedRun(cause, seed);
        header = run.Header();
        header.LoggerId = LoggerId;
        header.BootCount = (ushort)(Log.Sessions.HighestBootCount + 1);
        header.StartUtcSeconds = RunCalendar.StartUtcSeconds(cause.Code, seed);
        header.PlanName = plan.Name;
        settings.Apply(header);
        secondsAtStart = header.StartUtcSeconds;
        engine = new CaptureEngine(run.Board, Log, plan, header);
    }

    public static DataSheet Sheet { get; } = DataSheetReader.Parse(SampleSheet.Text(), SampleSheet.FileName);

    public RecordLog Log { get; }

    /// <summary>What a host sent; the next session begins with it.</summary>
    public VirtualSettings Settings { get; }

    public ushort BootCount => header.BootCount;

    /// <summary>Virtual time since the logger was switched on.</summary>
    public long NowMicroseconds => run.NowMicroseconds;

    /// <summary>Its clock; a host may set it. The session keeps the time at which it was begun.</summary>
    public uint UtcSeconds
    {
        get => secondsAtStart + (uint)(run.NowMicroseconds / 1_000_000);
        set => secondsAtStart = value - (uint)(run.NowMicroseconds / 1_000_000);
    }

    public SessionHeader Header => header;

    public LiveReadings Live => engine.Live;

    public bool Finished => ended;

    /// <summary>A bench pump's pressure on all three transducers; null: they hang on the truck.</summary>
    public double? BenchPascal
    {
        set => run.Board.BenchPascal = value;
    }

    /// <summary>Where the truck stands, as a work order would say; null where it would not.</summary>
    public double? AltitudeMetres => run.AltitudeMetres;

    /// <summary>Whether the card holds this very run already, closed in order: a restarted logger does not record it twice.</summary>
    public bool HoldsThisRun() => Enumerable.Range(0, Log.Sessions.Count)
        .Select(index => Log.Sessions[index])
        .Any(session => session.Ended && SessionDecoder.Decode(Bytes(session)).Session.Header.StartUtcSeconds == header.StartUtcSeconds);

    /// <summary>Lets one sample interval pass: truck, technician, logger. Closes the session after the last.</summary>
    public void Advance()
    {
        run.Advance();
        engine.Step(run.NowMicroseconds);
        if (run.Finished)
        {
            engine.End(SessionEndReason.Button, run.NowMicroseconds);
            ended = true;
        }
    }

    private byte[] Bytes(LoggedSession session)
    {
        byte[] bytes = new byte[session.Length];
        Log.Read(session, 0, bytes, 0, bytes.Length);
        return bytes;
    }
}
