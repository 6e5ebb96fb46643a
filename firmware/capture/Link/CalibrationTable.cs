using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Link
{
    /// <summary>The calibrations of the pressure channels, as they are told to a host that asks.</summary>
    public sealed class CalibrationTable
    {
        /// <summary>One has come in; whoever keeps it and puts it to use clears the flag.</summary>
        public bool Arrived;

        private readonly CalibrationAnswer[] channels = new CalibrationAnswer[Channel.Count - 1];

        public CalibrationTable()
        {
            for (int i = 0; i < channels.Length; i++)
            {
                channels[i] = new CalibrationAnswer { Channel = (byte)(i + 1) };
            }
        }

        /// <summary>Null for a number that is no pressure channel's.</summary>
        public CalibrationAnswer? Find(int channel) => channel < Channel.Main || channel >= Channel.Count ? null : channels[channel - 1];

        /// <summary>What the logger worked by so far.</summary>
        public void CopyFrom(SessionHeader header)
        {
            for (int i = 0; i < channels.Length; i++)
            {
                channels[i].CopyFrom(header.Pressures[i]);
            }
        }

        /// <summary>For the next session.</summary>
        public void CopyTo(SessionHeader header)
        {
            for (int i = 0; i < channels.Length; i++)
            {
                channels[i].CopyTo(header.Pressures[i]);
            }
        }
    }
}
