using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Engagements
{
    /// <summary>
    /// Notices that a clutch begins to fill, by the gear tag or by its pressure, whichever comes first, and waits until something
    /// disturbs it or eight seconds have passed; then the shape is read, a little with each sample set.
    /// </summary>
    public sealed class EngagementWatch
    {
        private const long LongestMicroseconds = 8000000;

        // Tags come up to a second late; an operator's hand adds a little.
        private const long TagLateMicroseconds = 1500000;
        private const long NeverFillsMicroseconds = 3500000;
        private const long LeadMicroseconds = 600000;

        // 20 kPa above the empty clutch: return springs hold more.
        private const int FloorPascal = 20000;
        // Of that floor: a clutch that never has more is empty, whatever trickles into its line; a piston needs as much to travel.
        private const int LeastFilled = 3;
        private const int SpeedMovedTenths = 1000;

        // Above this share of it the pedal is already on its way, and pressure with it.
        private const int PedalPart = 3;

        private readonly FineTrace _clutch;
        private readonly EngagementShape _shape;
        private readonly int _floor;
        private int _empty = SampleSet.Missing;
        private int _highest;
        private int _latest;
        private bool _watching;
        private bool _rose;
        private bool _reversal;
        private long _start;
        private long _riseBin;
        private long _tag;
        private Gear _gear;
        private Gear _lastTag;
        private long _lastTagTime;
        private int _speed;
        private long _stillUntil;
        private long _ending;
        private long _readEnd;
        private bool _readReversal;
        private bool _neverFilled;
        private bool _tagWaits;
        private Gear _waitingGear;
        private long _waitingSince;

        /// <param name="clutch">The clutch's trace, which goes on meanwhile.</param>
        public EngagementWatch(FineTrace clutch, SessionHeader header)
        {
            _clutch = clutch;
            _shape = new EngagementShape(_clutch);
            ChannelCalibration calibration = header.Pressures[Channel.Clutch - 1];
            long span = calibration.SpanPascal < 1 ? 1 : calibration.SpanPascal;
            _floor = IntegerMath.Clamp((long)FloorPascal * calibration.SpanCounts / span, 4, short.MaxValue);
        }

        /// <summary>What the last true answer of <see cref="Advance"/> ended.</summary>
        public readonly EngagementRecord Ended = new EngagementRecord();

        /// <summary>One has ended and is not read yet.</summary>
        public bool IsReading => _shape.IsReading || _neverFilled;

        /// <summary>Does a little of what is due; true when there was something.</summary>
        public bool Advance()
        {
            if (!IsReading)
            {
                bool tagWaits = _tagWaits;
                if (tagWaits)
                {
                    _tagWaits = false;
                    Tag(_waitingGear, _waitingSince);
                }

                return tagWaits;
            }

            if (_neverFilled)
            {
                _neverFilled = false;
                IsWhole = true;
                return true;
            }

            if (_shape.Advance())
            {
                Complete();
            }

            return true;
        }

        /// <summary>After <see cref="Advance"/>: an engagement is whole. To be taken before the next call.</summary>
        public bool IsWhole { get; private set; }

        public void Take() => IsWhole = false;

        public void Forget()
        {
            _watching = false;
            _tagWaits = false;
            _empty = SampleSet.Missing;
        }

        /// <summary>The tag changed: that may end an engagement. While one that ended before is read, it waits.</summary>
        public void Tag(Gear gear, long now)
        {
            if (_watching && IsReading)
            {
                _ending = _ending == 0 ? now : _ending;
                _tagWaits = true;
                _waitingGear = gear;
                _waitingSince = now;
                return;
            }

            bool directReversal = IsDirection(_lastTag) && IsDirection(gear);
            _lastTag = gear;
            _lastTagTime = now;
            if (_watching && !IsDirection(_gear) && now - _start <= TagLateMicroseconds && IsDirection(gear))
            {
                _gear = gear;
                _tag = now;
                _reversal |= directReversal;
                return;
            }

            // The pressure came first and was disturbed before its tag arrived: what fills now is that one's rest.
            bool alreadySeen = !_watching && _rose && now - _start <= TagLateMicroseconds;
            if (_watching)
            {
                Finish(_ending > 0 ? _ending : now);
            }

            if (IsDirection(gear) && _empty != SampleSet.Missing && !alreadySeen)
            {
                Begin(now, gear, now, directReversal);
            }
        }

        /// <summary>A bin is complete: that may end an engagement.</summary>
        public void Add(Bin bin)
        {
            int mean = bin.Means[Channel.Clutch];
            if (mean == Bin.NoMean)
            {
                return;
            }

            _latest = mean / 100;
            int speed = bin.Means[Channel.Speed] == Bin.NoMean ? SampleSet.Missing : bin.Means[Channel.Speed] / 100;
            FollowEmpty();
            if (!_watching)
            {
                if (_latest > _empty + _floor && _highest <= _empty + _floor)
                {
                    Begin(bin.StartMicroseconds, Gear.Unknown, -1, false);
                }

                _highest = _latest;
                return;
            }

            Watch(bin.StartMicroseconds, speed);
        }

        private void Watch(long now, int speed)
        {
            if (!_rose && _latest > _empty + _floor)
            {
                _rose = true;
                _riseBin = now;
            }

            if (_speed == SampleSet.Missing)
            {
                _speed = speed;
            }

            _highest = IntegerMath.Max(_highest, _latest);
            bool released = _rose && (_highest - _empty) > 2 * _floor && (_latest - _empty) * 10 < (_highest - _empty) * 6;
            int farFrom = SpeedMovedTenths + (_speed / 10);
            bool moved = speed != SampleSet.Missing && IntegerMath.Abs(speed - _speed) > farFrom;
            _stillUntil = speed == SampleSet.Missing || speed - _speed <= farFrom / PedalPart ? now : _stillUntil;
            bool late = now - _start > (_rose ? LongestMicroseconds : NeverFillsMicroseconds);
            if (_ending == 0 && (released || moved || late))
            {
                // What the pedal added to the pressure is none of the clutch's level.
                _ending = released || late ? now : _stillUntil + (2 * Bin.Microseconds);
            }

            // The one before it is read first.
            if (_ending > 0 && !IsReading)
            {
                Finish(_ending);
            }
        }

        private void Begin(long now, Gear gear, long tag, bool reversal)
        {
            _watching = true;
            _rose = false;
            _ending = 0;
            _start = now;
            _stillUntil = now;
            _tag = tag;
            _gear = gear;
            _reversal = reversal;
            _highest = _latest;
            _speed = SampleSet.Missing;
            if (gear == Gear.Unknown && IsDirection(_lastTag) && now - _lastTagTime <= TagLateMicroseconds)
            {
                _gear = _lastTag;
                _tag = _lastTagTime;
            }
        }

        private void Finish(long now)
        {
            _watching = false;
            bool seen = now - _start > NeverFillsMicroseconds - Bin.Microseconds;
            bool filled = _rose && _highest - _empty > LeastFilled * _floor;
            _highest = _latest;
            if (!filled)
            {
                if (seen && !_reversal && IsDirection(_gear) && _speed > 0)
                {
                    TakeNeverFilled();
                }

                return;
            }

            long tag = _tag >= 0 && _tag < _riseBin + Bin.Microseconds ? _tag : -1;
            _readEnd = now - (2 * Bin.Microseconds);
            _readReversal = _reversal;
            Ended.Gear = _gear;
            Ended.SpeedTenths = _speed == SampleSet.Missing ? 0 : _speed;
            Ended.NeverFilled = false;
            _shape.Begin(tag, _start - LeadMicroseconds, _readEnd, _floor, Ended);
        }

        private void Complete()
        {
            Ended.Disturbed |= _readReversal || _readEnd - Ended.StartMicroseconds < Ended.TotalMilliseconds * 1500L;
            IsWhole = _shape.IsFilling && Ended.SpeedTenths > 0;
        }

        private void TakeNeverFilled()
        {
            Ended.StartMicroseconds = _start;
            Ended.Gear = _gear;
            Ended.FillMilliseconds = Ended.RiseMilliseconds = Ended.TotalMilliseconds = 0;
            Ended.OvershootPerMille = 0;
            Ended.SettledHundredths = _latest * 100;
            Ended.SpeedTenths = _speed;
            Ended.StartFromPressure = false;
            Ended.Disturbed = false;
            Ended.NeverFilled = true;
            _neverFilled = true;
        }

        // Down at once, up only by small steps: a filling clutch must not take its own beginning for empty.
        private void FollowEmpty()
        {
            if (_empty == SampleSet.Missing || _latest < _empty - (_floor / 2))
            {
                _empty = _latest;
            }
            else if (!_watching && _latest <= _empty + _floor)
            {
                _empty += (_latest - _empty) / 8;
            }
        }

        private static bool IsDirection(Gear gear) => gear == Gear.Forward || gear == Gear.Reverse;
    }
}
