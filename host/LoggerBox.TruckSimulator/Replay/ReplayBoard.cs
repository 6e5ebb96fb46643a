using LoggerBox.Capture.Board;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.TruckSimulator.Replay;

/// <summary>A board whose truck is a recording: the row at hand is the present moment.</summary>
internal sealed class ReplayBoard(Recording recording) : IBoard
{
    public int Row { get; set; }

    public void Read(SampleSet sample)
    {
        for (int channel = 0; channel < Channel.Count; channel++)
        {
            sample.Values[channel] = recording.Values[channel][Row];
        }
    }

    public Gear ReadGear() => recording.Gears[Row];

    public Step ReadStepMark() => recording.Steps[Row];

    public int ReadOilTenthsCelsius() => recording.OilTenthsCelsius[Row];

    public void Show(Cue cue)
    {
        // Nobody sits in a recording; the engine has written the cue down.
    }
}
