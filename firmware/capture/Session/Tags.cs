using LoggerBox.Capture.Board;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Session
{
    /// <summary>What is known beside the readings: gear tag, the operator's mark, oil temperature. Each change becomes an event.</summary>
    public sealed class Tags
    {
        // A tenth of a degree a second at most: oil warms slowly, and each change costs a record.
        private const long OilEveryMicroseconds = 1000000;

        // A tag or mark that is missing for less than this is a hole in the recording, not news.
        private const long HoleMicroseconds = 500000;

        private readonly IBoard _board;
        private readonly WaitingEvents _events;
        private int _oil = SampleSet.Missing;
        private Gear _tagged;
        private Step _mark;
        private long _gearSeen;
        private long _markSeen;

        // When both were last read as they were before.
        private long _unchanged;
        private long _oilDue = long.MinValue;

        public Tags(IBoard board, RecordLog log)
        {
            _board = board;
            _events = new WaitingEvents(log);
        }

        /// <summary>The selector's direction; where it is not wired, the one that the operator's mark names.</summary>
        public Gear Gear;

        public Step Mark => _mark;

        /// <summary>As they were before the last <see cref="Read"/>.</summary>
        public Gear GearBefore { get; private set; }

        public Step MarkBefore { get; private set; }

        public bool GearChanged { get; private set; }

        public bool MarkChanged { get; private set; }

        /// <summary>One of them has, since whoever asks set it to false.</summary>
        public bool HasChanged;

        public void Read(long now)
        {
            Gear gear = _board.ReadGear();
            Step mark = _board.ReadStepMark();
            if (gear == _tagged && mark == _mark)
            {
                _unchanged = now;
            }
            else
            {
                Follow(gear, mark, now);
            }

            if (now >= _oilDue)
            {
                ReadOil(now);
            }
        }

        /// <summary>An event: it is in the log as soon as there is time for that.</summary>
        public void Write(long now, EventKind kind, int value) => _events.Add(now, kind, value);

        /// <summary>Some event is not in the log yet.</summary>
        public bool AnyWaits => _events.Any;

        public void StoreOne() => _events.StoreOne();

        public void StoreAll() => _events.StoreAll();

        private void Follow(Gear gear, Step mark, long now)
        {
            GearBefore = Gear;
            MarkBefore = _mark;
            _gearSeen = _unchanged > _gearSeen ? _unchanged : _gearSeen;
            _markSeen = _unchanged > _markSeen ? _unchanged : _markSeen;
            _gearSeen = gear != Gear.Unknown ? now : _gearSeen;
            if (gear != _tagged && (gear != Gear.Unknown || now - _gearSeen > HoleMicroseconds))
            {
                _tagged = gear;
                Write(now, EventKind.GearTag, (int)gear);
            }

            _markSeen = mark != Step.None ? now : _markSeen;
            MarkChanged = mark != _mark && (mark != Step.None || now - _markSeen > HoleMicroseconds);
            if (MarkChanged)
            {
                _mark = mark;
                Write(now, EventKind.StepMark, (int)mark);
            }

            Gear = _tagged != Gear.Unknown ? _tagged : StepCodes.GearOf(_mark);
            GearChanged = Gear != GearBefore;
            HasChanged = GearChanged || MarkChanged;
        }

        private void ReadOil(long now)
        {
            _oilDue = now + OilEveryMicroseconds;
            int oil = _board.ReadOilTenthsCelsius();
            if (oil != _oil && oil != SampleSet.Missing)
            {
                _oil = oil;
                Write(now, EventKind.OilTemperature, oil);
            }
        }
    }
}
