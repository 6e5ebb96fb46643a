using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Board
{
    /// <summary>
    /// What a board supplies to the capture engine. Everything is polled: nothing here waits, allocates or calls back.
    /// </summary>
    public interface IBoard
    {
        /// <summary>
        /// Reads speed and the three loops at the present moment into the set's values; the caller has set the time.
        /// </summary>
        void Read(SampleSet sample);

        /// <summary>The direction selector; Unknown on a truck without the input.</summary>
        Gear ReadGear();

        /// <summary>What the operator says this moment is (button, or a recording's own mark); None says nothing.</summary>
        Step ReadStepMark();

        /// <summary>Oil temperature in tenths of a degree Celsius, or <see cref="SampleSet.Missing"/>.</summary>
        int ReadOilTenthsCelsius();

        /// <summary>Gives a cue to the person in the seat.</summary>
        void Show(Cue cue);
    }
}
