using LoggerBox.BoardParts.Card;
using LoggerBox.BoardParts.Inputs;
using LoggerBox.BoardParts.Loops;
using LoggerBox.BoardParts.Pulses;
using LoggerBox.BoardParts.Settings;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Operation
{
    /// <summary>
    /// The logger's life, a step at a time: choose a plan, record, end, and what happens when the card or the supply does not play along.
    /// One thread calls it every 10 ms; it waits for nothing.
    /// </summary>
    public sealed class LoggerProgram
    {
        // Nobody has pressed the button for so long: the plan that is shown is the one.
        private const long ArmMicroseconds = 10000000;
        private const long CardAgainMicroseconds = 5000000;

        // Longer than any engine is cranked.
        private const long LowSupplyEndsMicroseconds = 30000000;

        // A frame is encoded and handed over in less.
        private const long FrameMicroseconds = 8000;

        public readonly InputLevels Levels = new InputLevels();

        /// <summary>A restart of one thread, for the record: reason times 256, and the thread; 0 once it was noted.</summary>
        public int RestartToNote;

        private readonly LoggerBoard _board;
        private readonly LoopInputs _loops;
        private readonly SteadyPulseCounter _counter;
        private readonly CardStore _card;
        private readonly RecordLog _log;
        private readonly Memory _memory;
        private readonly ISerialPort _port;
        private readonly PushButton _button = new PushButton();
        private readonly Debounced _supply = new Debounced(20000);
        private LinkAnswers _link;
        private RunningSession? _session;
        private long _armAt;
        private long _cardAt;
        private uint _greetings;
        private uint _lastNumber;
        private bool _wasCut;
        private bool _cardCameBack;

        public LoggerProgram(LoggerBoard board, LoopInputs loops, SteadyPulseCounter counter, CardStore card, Memory memory, ISerialPort port)
        {
            _board = board;
            _loops = loops;
            _counter = counter;
            _card = card;
            _log = new RecordLog(card);
            _memory = memory;
            _port = port;
            _link = new LinkAnswers(_log, port, 0, 0);
        }

        public LoggerState State { get; private set; }

        public RecordLog Log => _log;

        /// <summary>Once, before the first step. A session that was cut goes on as a new one at once: the engine may be being cranked.</summary>
        public void Start(long now)
        {
            if (_card.TryOpen())
            {
                _log.Open();
            }

            _memory.Load(_log.Sessions.HighestBootCount, now);
            _link = new LinkAnswers(_log, _port, _memory.Settings.LoggerId, _memory.Settings.BootCount);
            for (int i = 0; i < Own.Pressures.Length; i++)
            {
                _link.Calibrations.Find(i + 1)!.CopyFrom((CalibrationMessage)Own.Pressures[i]);
            }

            LoggedSession? last = _log.Sessions.Last;
            _wasCut = last != null && !last.Ended;
            State = _card.IsThere ? LoggerState.Choosing : LoggerState.WithoutCard;
            _armAt = _wasCut ? now : now + ArmMicroseconds;
            _cardAt = now + CardAgainMicroseconds;
            if (State == LoggerState.WithoutCard && !_card.IsBeingMade)
            {
                Give(Cue.StoreFailed, 0, now);
            }
        }

        public void Step(long now)
        {
            _board.Poll(Levels, now);
            ButtonPress press = _button.Update(Levels.Button, now);
            bool supplyChanged = _supply.Update(Levels.SupplyLow, now);
            switch (State)
            {
                case LoggerState.WithoutCard:
                    LookForCard(now);
                    break;
                case LoggerState.Choosing:
                    Choose(press, now);
                    break;
                case LoggerState.Recording:
                    Record(press, supplyChanged, now);
                    break;
                default:
                    Rest(press, now);
                    break;
            }

            AnswerLink(now);
            _board.Signals.Step(now);
        }

        private void LookForCard(long now)
        {
            _board.Signals.Readout = _card.IsBeingMade ? "FILL" : "CArd";
            if (now < _cardAt && !_card.IsBeingMade)
            {
                return;
            }

            _cardAt = now + CardAgainMicroseconds;
            if (_card.TryOpen())
            {
                _log.Open();
                _board.Signals.End(Cue.StoreFailed);
                State = LoggerState.Choosing;
                _cardCameBack = true;
                _armAt = now;
            }
        }

        private void Choose(ButtonPress press, long now)
        {
            Own.PlanNumber = Own.PlanNumber > _memory.Plans.Count ? (byte)0 : Own.PlanNumber;
            _board.Signals.Readout = DisplayWords.WithNumber("P###", Own.PlanNumber);
            if (press == ButtonPress.Short)
            {
                Own.PlanNumber = (byte)((Own.PlanNumber + 1) % (_memory.Plans.Count + 1));
                _armAt = now + ArmMicroseconds;
                Give(Cue.PlanChosen, Own.PlanNumber, now);
            }

            if (press == ButtonPress.Long || now >= _armAt)
            {
                Arm(now);
            }
        }

        private void Arm(long now)
        {
            _memory.Save();
            _session = new RunningSession(_board, _loops, _log, _memory, _wasCut, now);
            _link.Live = _session.Live;
            State = _session.IsOpen ? LoggerState.Recording : LoggerState.Ended;
            if (!_session.IsOpen)
            {
                StopForCard(now);
            }

            else if (_cardCameBack)
            {
                _session.Note(EventKind.BoardFault, EventRecord.Pair((int)BoardFault.Card, 0), now);
            }

            _wasCut = false;
            _cardCameBack = false;
        }

        private void Record(ButtonPress press, bool supplyChanged, long now)
        {
            RunningSession session = _session!;
            if (RestartToNote != 0)
            {
                session.Note(EventKind.Restart, RestartToNote, now);
                session.Tell(Cue.Restarted, 0, now);
                RestartToNote = 0;
            }

            session.Step(_counter.Rejected, now);
            bool isToEnd = session.TakePress(press, now);
            if (supplyChanged)
            {
                session.TellSupply(_supply.IsOn, now);
            }

            if (_log.IsFull || !_card.IsThere)
            {
                session.End(SessionEndReason.StoreFull, now);
                StopForCard(now);
            }
            else if (isToEnd)
            {
                session.End(SessionEndReason.Button, now);
                State = LoggerState.Ended;
            }
            else if (_supply.IsOn && now - _supply.SinceMicroseconds > LowSupplyEndsMicroseconds)
            {
                session.End(SessionEndReason.LowSupply, now);
                State = LoggerState.Ended;
            }
        }

        private void StopForCard(long now)
        {
            State = _card.IsThere ? LoggerState.Ended : LoggerState.WithoutCard;
            _cardAt = now + CardAgainMicroseconds;
            Give(_card.IsThere ? Cue.StoreFull : Cue.StoreFailed, 0, now);
        }

        private void Rest(ButtonPress press, long now)
        {
            _lastNumber = _log.Sessions.Last == null ? _lastNumber : _log.Sessions.Last.Number;
            _board.Signals.Readout = DisplayWords.Number((int)_lastNumber, DisplayWords.Places);
            if (press != ButtonPress.None)
            {
                _board.Signals.Quiet();
                State = LoggerState.Choosing;
                _armAt = now + ArmMicroseconds;
            }
        }

        // A frame takes longer than a poll: while recording one is begun only when there is time for it before the next sample set.
        private void AnswerLink(long now)
        {
            if (State == LoggerState.Recording && _session!.Spare(now) < FrameMicroseconds)
            {
                return;
            }

            _link.Step(now, _memory.Clock.UtcSeconds(now));
            if (_link.Greetings != _greetings)
            {
                _greetings = _link.Greetings;
                Give(Cue.LinkAlive, 0, now);
            }

            if (_link.PlanArrived)
            {
                _link.PlanArrived = false;
                int number = _memory.Plans.Put(_link.Plan);
                Own.PlanNumber = number > 0 ? (byte)number : Own.PlanNumber;
                Give(number > 0 ? Cue.PlanChosen : Cue.SettingsDamaged, number, now);
            }

            if (_link.ClockArrived)
            {
                _link.ClockArrived = false;
                _memory.SetClock(_link.UtcSeconds, now);
            }

            if (_link.Calibrations.Arrived)
            {
                _link.Calibrations.Arrived = false;
                KeepCalibrations(now);
            }
        }

        private void KeepCalibrations(long now)
        {
            for (int i = 0; i < Own.Pressures.Length; i++)
            {
                Own.Pressures[i].CopyFrom((CalibrationMessage)_link.Calibrations.Find(i + 1)!);
            }

            if (!_memory.Save())
            {
                Give(Cue.SettingsDamaged, 0, now);
            }
        }

        private BoardSettings Own => _memory.Settings;

        private void Give(Cue cue, int number, long now)
        {
            if (State == LoggerState.Recording)
            {
                _session!.Tell(cue, number, now);
            }
            else
            {
                _board.Signals.Give(cue, number, now);
            }
        }
    }
}
