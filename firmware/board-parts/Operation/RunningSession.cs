using LoggerBox.BoardParts.Inputs;
using LoggerBox.BoardParts.Loops;
using LoggerBox.Capture;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Operation
{
    /// <summary>One session on this board: engine, pace and watch, and what button and supply mean while it runs.</summary>
    internal sealed class RunningSession
    {
        private readonly LoggerBoard _board;
        private readonly CaptureEngine _engine;
        private readonly SamplePace _pace;
        private readonly FaultWatch _faults;
        private bool _isMissingAsked;

        public RunningSession(LoggerBoard board, LoopInputs loops, RecordLog log, Memory memory, bool afterCut, long now)
        {
            _board = board;
            SessionHeader header = MakeHeader(memory, now);
            PlanRecord plan = memory.Plans.CopyOf(memory.Settings.PlanNumber);
            board.Begin(header);
            _engine = new CaptureEngine(board, log, plan, header);
            _pace = new SamplePace(header.SampleIntervalMicroseconds);
            _faults = new FaultWatch(board, loops);
            _pace.IsDue(now);
            _engine.Begin(_pace.Microseconds);
            _engine.Step(_pace.Microseconds);
            IsOpen = log.IsRecording;
            if (IsOpen)
            {
                SayHow(memory, afterCut, now);
            }
        }

        /// <summary>What a host that watches is told.</summary>
        public LiveReadings Live => _engine.Live;

        /// <summary>The card took the session's beginning.</summary>
        public bool IsOpen { get; }

        /// <summary>Time until the next sample set.</summary>
        public long Spare(long now) => _pace.Spare(now);

        public void Step(int rejectedPulseReadings, long now)
        {
            if (!_pace.IsDue(now))
            {
                return;
            }

            _engine.Step(_pace.Microseconds);
            _faults.Look(_engine, rejectedPulseReadings, now);
            ShowReadout();
            AnswerMissing(now);
        }

        /// <summary>
        /// Short says what is missing; an answer while the set-up is asked for: short the truck is down, long the wheels are clear.
        /// True for a long press that was no answer: the session is to be ended.
        /// </summary>
        public bool TakePress(ButtonPress press, long now)
        {
            if (press == ButtonPress.None)
            {
                return false;
            }

            _engine.Note(EventKind.Button, (int)press, now);
            bool isAnswer = _board.SetUp.IsAsked(now);
            if (isAnswer)
            {
                SayPlacing(press == ButtonPress.Long ? TruckPlacing.WheelsClear : TruckPlacing.Down, now);
            }
            else if (press == ButtonPress.Short)
            {
                _board.Signals.Quiet();
                _isMissingAsked = true;
                AnswerMissing(now);
            }

            return press == ButtonPress.Long && !isAnswer;
        }

        public void Note(EventKind kind, int value, long now) => _engine.Note(kind, value, now);

        public void TellSupply(bool isLow, long now)
        {
            _engine.Note(EventKind.BoardFault, EventRecord.Pair((int)BoardFault.Supply, isLow ? 1 : 0), now);
            if (isLow)
            {
                _engine.Tell(Cue.LowSupply, now);
                _engine.StoreNow();
            }
            else
            {
                _board.Signals.End(Cue.LowSupply);
            }
        }

        public void Tell(Cue cue, int number, long now)
        {
            _board.CueNumber = number;
            _engine.Tell(cue, now);
        }

        public void End(SessionEndReason reason, long now)
        {
            // The last hold counts, which may still stand.
            _engine.Settle(now);
            SayMissing(now);
            _engine.End(reason, now);
        }

        // What has just ended counts: it is named over some sets.
        private void AnswerMissing(long now)
        {
            if (!_isMissingAsked)
            {
                return;
            }

            if (_engine.IsNaming)
            {
                _engine.NameSoon();
                return;
            }

            _isMissingAsked = false;
            SayMissing(now);
        }

        private void SayMissing(long now) => Tell(_engine.StepsMissing == 0 ? Cue.AllCaptured : Cue.StepsMissing, _engine.StepsMissing, now);

        private void SayPlacing(TruckPlacing placing, long now)
        {
            _board.SetUp.Say(placing, now);
            _board.Signals.End(Cue.SetUpClearOrDown);
            _engine.Note(EventKind.SetUp, (int)placing, now);
        }

        private void SayHow(Memory memory, bool afterCut, long now)
        {
            if (memory.Restart != 0)
            {
                _engine.Note(EventKind.Restart, memory.Restart, now);
            }
            else if (afterCut)
            {
                _engine.Note(EventKind.Restart, EventRecord.Pair((int)RestartReason.PowerReturned, 0), now);
            }

            Tell(afterCut || memory.Restart != 0 ? Cue.Restarted : Cue.Armed, 0, now);
            if (!memory.Clock.IsSet)
            {
                _engine.Note(EventKind.BoardFault, EventRecord.Pair((int)BoardFault.Clock, 1), now);
                Tell(Cue.ClockNotSet, 0, now);
            }

            if (memory.IsWithoutCalibration)
            {
                _engine.Note(EventKind.BoardFault, EventRecord.Pair((int)BoardFault.Settings, 1), now);
                Tell(Cue.SettingsDamaged, 0, now);
            }
        }

        private void ShowReadout()
        {
            if (_engine.RunMilliseconds < 0)
            {
                _board.Signals.EndStallAlarms();
                _board.Signals.Readout = _engine.SpeedTenths == SampleSet.Missing ? "----" : DisplayWords.Number(_engine.SpeedTenths / 10, DisplayWords.Places);
            }
            else
            {
                _board.Signals.Readout = DisplayWords.WithNumber("t###", _engine.RunMilliseconds / 1000);
            }
        }

        private static SessionHeader MakeHeader(Memory memory, long now)
        {
            PlanRecord plan = memory.Plans[memory.Settings.PlanNumber];
            SessionHeader header = new SessionHeader();
            header.LoggerId = memory.Settings.LoggerId;
            header.BootCount = memory.Settings.BootCount;
            header.StartUtcSeconds = memory.Clock.UtcSeconds(now);
            header.SampleIntervalMicroseconds = memory.Settings.SampleIntervalMicroseconds;
            header.PickupPulses = plan.PickupPulses;
            header.PickupRevolutions = plan.PickupRevolutions;
            header.HasGearInput = memory.Settings.HasGearInput;
            header.PlanName = plan.Name;
            for (int i = 0; i < header.Pressures.Length; i++)
            {
                memory.Settings.Pressures[i].CopyTo(header.Pressures[i]);
            }

            return header;
        }
    }
}
