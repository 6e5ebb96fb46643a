using System;
using System.Threading;
using LoggerBox.BoardParts.Operation;
using LoggerBox.BoardParts.Supervision;
using LoggerBox.Protocol.Records;
using nanoFramework.Hardware.Esp32;
using nanoFramework.Runtime.Native;

namespace LoggerBox.BoardEsp32
{
    /// <summary>
    /// The program's three threads and who looks after them. The platform has no watchdog, and a thread that throws ends without a word:
    /// one that ended is started again, one that gives no sign restarts the board, and either is written down.
    /// </summary>
    internal sealed class BoardThreads
    {
        private const int Sampling = 0;
        private const int Sending = 1;
        private const int Showing = 2;

        // One tick of the system: the shortest sleep there is.
        private const int TickMilliseconds = 10;
        private const int LookMilliseconds = 500;
        private const int RebootWithinMilliseconds = 2000;

        private readonly LoggerProgram _program;
        private readonly LoggerBoard _board;
        private readonly Memory _memory;
        private readonly SerialLine _line;
        private readonly Seat _seat;
        private readonly Thread[] _threads = new Thread[3];
        private readonly ThreadWatch _watch = new ThreadWatch(3);

        public BoardThreads(LoggerProgram program, LoggerBoard board, Memory memory, SerialLine line, Seat seat)
        {
            _program = program;
            _board = board;
            _memory = memory;
            _line = line;
            _seat = seat;
        }

        public static long Now => (long)HighResTimer.GetCurrent();

        /// <summary>Starts the threads and looks after them for ever.</summary>
        public void Run()
        {
            for (int i = 0; i < _threads.Length; i++)
            {
                Start(i);
            }

            while (true)
            {
                Thread.Sleep(LookMilliseconds);
                for (int i = 0; i < _threads.Length; i++)
                {
                    LookAfter(i);
                }
            }
        }

        private void Start(int thread)
        {
            _watch.Beat(thread, Now);
            _threads[thread] = thread == Sampling ? new Thread(Sample) : thread == Sending ? new Thread(Send) : new Thread(Show);
            _threads[thread].Priority = thread == Sampling ? ThreadPriority.Highest : thread == Sending ? ThreadPriority.Normal : ThreadPriority.Lowest;
            _threads[thread].Start();
        }

        private void LookAfter(int thread)
        {
            switch (_watch.Judge(thread, _threads[thread].IsAlive, Now))
            {
                case ThreadVerdict.StartAgain:
                    _program.RestartToNote = EventRecord.Pair((int)RestartReason.ThreadEnded, thread);
                    Start(thread);
                    break;
                case ThreadVerdict.EndsTooOften:
                    Reboot(RestartReason.ThreadEndedOften, thread);
                    break;
                case ThreadVerdict.BoardIsStuck:
                    Reboot(RestartReason.ThreadStuck, thread);
                    break;
                default:
                    break;
            }
        }

        private void Reboot(RestartReason reason, int thread)
        {
            _memory.Settings.RestartReason = (byte)reason;
            _memory.Settings.RestartThread = (byte)thread;
            _memory.Save();
            Power.RebootDevice(RebootWithinMilliseconds);
        }

        private void Sample()
        {
            try
            {
                bool readContacts = true;
                while (true)
                {
                    if (readContacts)
                    {
                        _seat.Read(_program.Levels);
                    }

                    readContacts = !readContacts;
                    _program.Step(Now);
                    _seat.Sound(_board.Signals);
                    _watch.Beat(Sampling, Now);
                    Thread.Sleep(TickMilliseconds);
                }
            }
            catch (Exception fault)
            {
                Console.WriteLine("The sampling thread ended: " + fault.Message);
            }
        }

        private void Send()
        {
            try
            {
                while (true)
                {
                    _watch.Beat(Sending, Now);
                    if (!_line.Send())
                    {
                        Thread.Sleep(TickMilliseconds);
                    }
                }
            }
            catch (Exception fault)
            {
                Console.WriteLine("The sending thread ended: " + fault.Message);
            }
        }

        private void Show()
        {
            try
            {
                while (true)
                {
                    _seat.Show(_board.Signals);
                    _watch.Beat(Showing, Now);
                    Thread.Sleep(TickMilliseconds * 10);
                }
            }
            catch (Exception fault)
            {
                Console.WriteLine("The display's thread ended: " + fault.Message);
            }
        }
    }
}
