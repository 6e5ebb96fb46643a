using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Session;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Guards
{
    /// <summary>All that watches a run while it lasts, and what is said of the holds in it.</summary>
    public sealed class RunGuards
    {
        // A minute with the engine running, in tenths of a second.
        private const int BinsOfATest = 600;

        public readonly StallGuard Stall;

        private readonly PressureGuard _pressures;
        private readonly ReliefGuard _relief;
        private readonly HoldWindow _window;
        private readonly CaptureCues _captures;
        private readonly Tags _tags;
        private readonly CueGiver _cues;
        private bool _setUpAsked;
        private int _runningBins;
        private bool _capturedInRun;

        public RunGuards(PlanRecord plan, SessionHeader header, Tags tags, CueGiver cues)
        {
            Stall = new StallGuard(plan);
            _pressures = new PressureGuard(plan, header);
            _relief = new ReliefGuard(plan);
            _window = new HoldWindow(plan);
            _captures = new CaptureCues(plan, header, _window);
            _tags = tags;
            _cues = cues;
        }

        /// <summary>A hold has stood long enough; speed and line pressure as they are, main in counts where it has a reading.</summary>
        public void Captured(int speedTenths, bool hasMain, int mainCounts, long now)
        {
            _capturedInRun = true;
            _cues.Give(_captures.Captured(_tags.Gear, _tags.Mark, speedTenths), now);
            _cues.Give(hasMain ? _captures.Borderline(_tags.Gear, speedTenths, mainCounts) : Cue.None, now);
        }

        public void Left(int binsOpen, int binsUntilCaptured, int speedTenths, long now) =>
            _cues.Give(_captures.Left(binsOpen, binsUntilCaptured, speedTenths), now);

        /// <param name="quickTenths">The speed of this moment, less exactly.</param>
        public void Watch(Bin bin, int speedTenths, int quickTenths, long now)
        {
            bool ran = Stall.RunningMilliseconds >= 0;
            Cue cue = Stall.Watch(now, _tags.Gear, _tags.Mark, speedTenths, quickTenths);
            _cues.Give(cue, now);
            bool runs = Stall.RunningMilliseconds >= 0;
            if (runs && !ran)
            {
                _capturedInRun = false;
                AskForSetUp(now);
            }

            _cues.Give(ran && !runs && cue == Cue.CoolDown && !_capturedInRun ? Cue.NotCapturedUnsteady : Cue.None, now);
            AskForZero(speedTenths, now);
            _cues.Give(_pressures.Watch(bin), now);
            _cues.Give(_relief.Watch(_tags.Gear, speedTenths), now);
            _cues.Give(_window.Watch(_tags.Gear, _tags.Mark, speedTenths), now);
        }

        // After a test the zero is wanted again; an engine that was only started and stopped has nothing to compare.
        private void AskForZero(int speedTenths, long now)
        {
            _cues.Give(speedTenths == 0 && _runningBins >= BinsOfATest ? Cue.ZeroAgain : Cue.None, now);
            _runningBins = speedTenths == 0 ? 0 : _runningBins + 1;
        }

        // Once, and again when an answer was given that no longer holds.
        private void AskForSetUp(long now)
        {
            bool isKnown = _tags.Mark != Step.None;
            _cues.Give(isKnown || _setUpAsked ? Cue.None : Cue.SetUpClearOrDown, now);
            _setUpAsked = !isKnown;
        }
    }
}
