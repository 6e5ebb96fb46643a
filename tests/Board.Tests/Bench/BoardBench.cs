using System;
using LoggerBox.BoardParts.Card;
using LoggerBox.BoardParts.Clock;
using LoggerBox.BoardParts.Loops;
using LoggerBox.BoardParts.Operation;
using LoggerBox.BoardParts.Pulses;
using LoggerBox.BoardParts.Settings;
using LoggerBox.BoardParts.TwoWire;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Board.Tests.Bench;

/// <summary>
/// The whole firmware but the chip's own drivers, on simulated chips and a card that is a file. It can be started again and again, as
/// after a brown-out: card, flash and clock chip keep what they hold.
/// </summary>
public sealed class BoardBench : IDisposable
{
    public const long PollMicroseconds = 10000;
    public const uint Utc2026 = 1795600000;

    public BoardBench(long cardBytes = 8 << 20)
    {
        Card = new DiskCard(cardBytes);
        new Ds3231(Chips).TryWrite(Utc2026);
        Calibrate();
    }

    public SimulatedPulses Pulses { get; private set; } = new();

    public SimulatedChips Chips { get; } = new();

    public DiskCard Card { get; }

    public MemoryFlash[] Flash { get; } = [new(), new(), new(), new()];

    public LoopbackPort Port { get; } = new();

    public LoggerProgram Program { get; private set; } = null!;

    public LoggerBoard Board { get; private set; } = null!;

    public Memory Memory { get; private set; } = null!;

    public SteadyPulseCounter Counter { get; private set; } = null!;

    public long Now => Pulses.Now;

    public string Text => Board.Signals.Text;

    /// <summary>The board gets its power.</summary>
    public BoardBench Start()
    {
        double rpm = Pulses.Rpm;
        double pulsesPerRevolution = Pulses.PulsesPerRevolution;
        Pulses = new SimulatedPulses { Rpm = rpm, PulsesPerRevolution = pulsesPerRevolution };
        Pulses.Advance(400000);
        Chips.RestartConverters();
        BusCare care = new(Chips);
        LoopInputs loops = new(Chips, care);
        Counter = new SteadyPulseCounter(Pulses);
        Memory = new Memory(new TwoCopies(Flash[0], Flash[1]), new TwoCopies(Flash[2], Flash[3]), new Ds3231(Chips), care);
        Board = new LoggerBoard(Counter, loops);
        Program = new LoggerProgram(Board, loops, Counter, new CardStore(Card), Memory, Port);
        Program.Start(Now);
        return this;
    }

    /// <summary>The loop goes round for so long.</summary>
    public BoardBench Run(double seconds)
    {
        for (int i = 0; i < (int)Math.Round(seconds * 1e6 / PollMicroseconds); i++)
        {
            Poll(PollMicroseconds);
        }

        return this;
    }

    /// <summary>The loop comes round once, after so long.</summary>
    public void Poll(long afterMicroseconds)
    {
        Pulses.Advance(afterMicroseconds);
        Program.Step(Now);
    }

    public BoardBench Press(double seconds)
    {
        Program.Levels.Button = true;
        Run(seconds);
        Program.Levels.Button = false;
        return Run(0.2);
    }

    /// <summary>Starts, and waits until a session is open.</summary>
    public BoardBench Record() => Start().Run(11);

    /// <summary>The newest session, as a host would read it.</summary>
    public ReadSession Session() => ReadSession.Of(Program.Log, Program.Log.Sessions.Last!);

    public void Dispose() => Card.Dispose();

    // 500 psi over 16 mA on the first two loops, 300 on the third.
    private void Calibrate()
    {
        BoardSettings settings = new();
        settings.Reset();
        settings.LoggerId = 0xB0A7;
        int[] spans = [3447379, 3447379, 2068427];
        for (int i = 0; i < spans.Length; i++)
        {
            (settings.Pressures[i].Kind, settings.Pressures[i].ZeroCounts, settings.Pressures[i].SpanCounts) = (ChannelKind.CurrentLoop, 3200, 12800);
            (settings.Pressures[i].SpanPascal, settings.Pressures[i].AccuracyPascal) = (spans[i], 8600);
        }

        TwoCopies copies = new(Flash[0], Flash[1]);
        copies.Load();
        settings.Write(copies.Begin());
        copies.Save();
    }
}
