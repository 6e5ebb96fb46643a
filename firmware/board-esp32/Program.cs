using System;
using System.Device.Gpio;
using LoggerBox.BoardParts.Card;
using LoggerBox.BoardParts.Clock;
using LoggerBox.BoardParts.Loops;
using LoggerBox.BoardParts.Operation;
using LoggerBox.BoardParts.Pulses;
using LoggerBox.BoardParts.Settings;
using LoggerBox.BoardParts.TwoWire;
using nanoFramework.Runtime.Native;
using GC = nanoFramework.Runtime.Native.GC;

namespace LoggerBox.BoardEsp32
{
    /// <summary>Wires the board's parts together and starts them.</summary>
    public static class Program
    {
        private const int RebootWithinMilliseconds = 2000;

        public static void Main()
        {
            try
            {
                Run();
            }
            catch (Exception fault)
            {
                // A part that could not even be opened: the board tries again rather than standing there dead.
                Console.WriteLine("The start failed: " + fault.Message);
                Power.RebootDevice(RebootWithinMilliseconds);
            }
        }

        private static void Run()
        {
            GpioController pins = new GpioController();
            HardwareBus bus = new HardwareBus(pins);
            BusCare care = new BusCare(bus);
            LoopInputs loops = new LoopInputs(bus, care);
            SteadyPulseCounter counter = new SteadyPulseCounter(new HardwarePulseCounter());
            Memory memory = new Memory(
                new TwoCopies(new FlashCopy("settings.0"), new FlashCopy("settings.1")),
                new TwoCopies(new FlashCopy("plans.0"), new FlashCopy("plans.1")),
                new Ds3231(bus),
                care);
            LoggerBoard board = new LoggerBoard(counter, loops);
            SerialLine line = new SerialLine();
            LoggerProgram program = new LoggerProgram(board, loops, counter, new CardStore(new CardLog()), memory, line);
            program.Start(BoardThreads.Now);
            CardPlans.TakeOver(memory.Plans);
            BootReport.Print(memory.Settings.BootCount, memory.Settings.LoggerId);
            Seat seat = new Seat(pins);
            StepBench bench = new StepBench(loops, counter, seat);
            if (bench.IsWanted)
            {
                bench.Print();
            }

            GC.Run(true);
            new BoardThreads(program, board, memory, line, seat).Run();
        }
    }
}
