using System;
using LoggerBox.BoardParts.Inputs;
using LoggerBox.BoardParts.Loops;
using LoggerBox.Capture.Board;
using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.BoardEsp32
{
    /// <summary>
    /// Measures on this board, in microseconds, what the program costs: the engine's step over a built-in trace, and each call of the
    /// hardware that a step makes. It runs when the button is held while power comes, and prints its lines on the debug socket.
    /// </summary>
    internal sealed class StepBench
    {
        private const int StoreBytes = 48 * 1024;
        private const int LinesEvery = 500;
        private const int Steps = 3000;
        private const int Calls = 200;

        private readonly LoopInputs _loops;
        private readonly IPulseCounter _counter;
        private readonly Seat _seat;
        private readonly InputLevels _levels = new InputLevels();
        private readonly SampleSet _sample = new SampleSet();

        public StepBench(LoopInputs loops, IPulseCounter counter, Seat seat)
        {
            _loops = loops;
            _counter = counter;
            _seat = seat;
        }

        public bool IsWanted
        {
            get
            {
                _seat.Read(_levels);
                return _levels.Button;
            }
        }

        public void Print()
        {
            Console.WriteLine("bench: microseconds, mean and worst");
            MeasureSteps();
            long counterTime = 0, loopTime = 0, contactTime = 0;
            for (int i = 0; i < Calls; i++)
            {
                long start = BoardThreads.Now;
                _counter.Read(out long _, out long _);
                long counted = BoardThreads.Now;
                _loops.Read(_sample, counted);
                long read = BoardThreads.Now;
                _seat.Read(_levels);
                counterTime += counted - start;
                loopTime += read - counted;
                contactTime += BoardThreads.Now - read;
            }

            Console.WriteLine("pulse counter " + (counterTime / Calls).ToString());
            Console.WriteLine("three converters " + (loopTime / Calls).ToString());
            Console.WriteLine("four contacts " + (contactTime / Calls).ToString());
        }

        private static void MeasureSteps()
        {
            RecordedRun run = new RecordedRun(new PartedTruck(TruckTrace.WholeTest), TruckPlan.Whole(), 20000, new CutStore(StoreBytes));
            long all = 0, worst = 0;
            for (int i = 1; i <= Steps; i++)
            {
                long start = BoardThreads.Now;
                run.Step();
                long passed = BoardThreads.Now - start;
                all += passed;
                worst = passed > worst ? passed : worst;
                if (i % LinesEvery == 0)
                {
                    Console.WriteLine("steps to " + i.ToString() + ": " + (all / LinesEvery).ToString() + ", " + worst.ToString());
                    all = 0;
                    worst = 0;
                }
            }
        }
    }
}
