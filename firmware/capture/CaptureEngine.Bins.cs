using LoggerBox.Capture.Board;
using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture
{
    /// <summary>The readings, bin by bin: guards at once, holds with the sets that follow.</summary>
    public sealed partial class CaptureEngine
    {
        // Three seconds of standing still: the operator may let go. After one it is worth to say which step it looks like.
        private const int BinsUntilCaptured = 15;
        private const int BinsASecond = 5;

        private const int PartsOfBin = 2;
        private const int MostBinWaits = 2;

        private int _binsOpen;
        private int _holdSpeed;

        // Parts of the newest bin's following that are left, and sets that have put them off.
        private int _binParts;
        private int _binWaited;

        // True when a bin was completed.
        private bool FollowReadings(SampleSet clean, long time)
        {
            long now = clean.Microseconds;
            int[] values = clean.Values;
            _speed.Add(now, values[Channel.Speed]);
            _clutch.Add(now, values[Channel.Clutch]);
            if (_binParts > 0 && _bins.IsCompletedBy(clean))
            {
                FollowAll(_tags.Gear, _tags.Mark, time);
            }

            if (!_bins.Add(clean))
            {
                return false;
            }

            Bin bin = _bins.Completed;
            SpeedTenths = bin.Means[Channel.Speed] == Bin.NoMean ? SampleSet.Missing : bin.Means[Channel.Speed] / 100;
            _engagements.Add(bin);
            _guards.Watch(bin, SpeedTenths, _sample.QuickSpeed != SampleSet.Missing ? _sample.QuickSpeed : SpeedTenths, now);
            _binParts = PartsOfBin;
            _binWaited = 0;
            Show(time);
            return true;
        }

        // A bin goes to the guards at once, and to the holds in two parts with the sets after it: one step would have too much to do. A set that brings an
        // edge has enough to do with that, as has one of a block that must be stored soon, and puts it off, twice at the most. Returns what it took.
        private int FollowSoon(long now)
        {
            if (!_spare.IsFast)
            {
                FollowAll(_tags.Gear, _tags.Mark, now);
                return 0;
            }

            if ((_sample.IsSpeedNew || (_recorder.IsStoring && _recorder.IsInHurry(1))) && _binWaited < MostBinWaits)
            {
                _binWaited++;
                return 0;
            }

            return FollowPart(_tags.Gear, _tags.Mark, now);
        }

        private void FollowAll(Gear gear, Step mark, long now)
        {
            while (_binParts > 0)
            {
                FollowPart(gear, mark, now);
            }
        }

        private int FollowPart(Gear gear, Step mark, long now)
        {
            bool isFirst = _binParts-- == PartsOfBin;
            if (isFirst)
            {
                if (_holds.MustBeTaken)
                {
                    _ended.Finish(now);
                }

                _holds.Take(_bins.Completed);
                _clean.Learn();
                _spare.LookAhead();
                FollowLoops(now);
                return SpareTime.OfTakenBin;
            }

            bool wasOpen = _holds.IsOpen;
            _spare.MayBeDue = true;
            FollowHold(gear, mark, now);
            FollowStep();
            return wasOpen != _holds.IsOpen ? SpareTime.OfTurn : SpareTime.OfLook + (_holds.ChannelsLookedAt * SpareTime.OfLookAtChannel);
        }

        private void FollowLoops(long now)
        {
            if (_loops.Look())
            {
                _tags.Write(now, EventKind.LoopState, _loops.Changed);
                _cues.Give(_loops.IsFault ? Cue.LoopFault : Cue.None, now);
            }
        }

        private void FollowHold(Gear gear, Step mark, long now)
        {
            bool wasOpen = _holds.IsOpen;
            if (_holds.Look(_sample.SpeedBiasHundredths))
            {
                _ended.Begin(gear, mark);
            }
            else if (_holds.IsHeldUp)
            {
                // Two have ended and wait for a name that takes long: once in one long step, before a third begins.
                _ended.Finish(now);
                _holds.Look(_sample.SpeedBiasHundredths);
            }

            if (_holds.JustOpened)
            {
                _binsOpen = 0;
                _due.TimeRunUp((int)(_holds.LatestHundredths(Channel.Speed) / 100), gear);
            }
            else if (wasOpen && !_holds.IsOpen)
            {
                _guards.Left(_binsOpen, BinsUntilCaptured, _holdSpeed, now);
            }

            bool hasSpeed = _holds.IsOpen && _holds.HasLatest(Channel.Speed);
            _holdSpeed = hasSpeed ? (int)(_holds.LatestHundredths(Channel.Speed) / 100) : _holds.IsOpen ? SampleSet.Missing : _holdSpeed;
            if (_holds.IsOpen && !_holds.JustOpened && ++_binsOpen == BinsUntilCaptured)
            {
                bool hasMain = _holds.HasLatest(Channel.Main);
                _guards.Captured(_holdSpeed, hasMain, hasMain ? (int)(_holds.LatestHundredths(Channel.Main) / 100) : 0, now);
            }
        }

        private void FollowStep()
        {
            if (!_holds.IsOpen)
            {
                _live.Step = _tags.Mark;
            }
            else if (_binsOpen == BinsASecond || (_binsOpen == BinsUntilCaptured && !_ended.IsRecognised))
            {
                _ended.Look(_binsOpen / BinsASecond);
            }
        }

        private void BreakHold(int untrusted, Gear gear, Step mark, long now)
        {
            if (untrusted == 0)
            {
                _ended.Finish(now);
            }

            if (_holds.Break(untrusted))
            {
                _ended.Begin(gear, mark);
            }
        }
    }
}
