using LoggerBox.Capture.Board;
using LoggerBox.Capture.Speed;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.SelfTest.Traces
{
    /// <summary>
    /// A board on an invented truck: speed and pressures run from part to part of a table, pickup and loops see them with noise.
    /// Integers only, so that it is the same truck everywhere.
    /// </summary>
    internal sealed class PartedTruck : IBoard
    {
        private const int SpeedUpMilliseconds = 900;
        private const int ClutchFillMilliseconds = 400;
        private const int ClutchRiseMilliseconds = 500;

        // One pulse in two revolutions, tenths of rpm times microseconds.
        private const long PulsePhase = 1200000000;

        private readonly int[] table;
        private readonly Noise noise = new Noise(2026);
        private readonly int[] from = new int[TruckTrace.Columns];
        private PulseSpeed speed = new PulseSpeed(1, 2);
        private int row;
        private long rowStart;
        private long now;
        private long phase;

        public PartedTruck(int[] table)
        {
            this.table = table;
            System.Array.Copy(table, from, from.Length);
        }

        /// <summary>How often the pickup is polled.</summary>
        public int PollMicroseconds { get; set; } = 10000;

        /// <summary>Cues that were shown.</summary>
        public int Cues { get; private set; }

        /// <summary>The table goes round instead of ending.</summary>
        public bool GoesRound { get; set; }

        public bool IsOver => row * TruckTrace.Columns >= table.Length;

        public bool Is(int flag) => (Column(6) & flag) != 0;

        /// <summary>Lets the truck run on to the moment; the pickup is polled on the way.</summary>
        public void RunTo(long microseconds)
        {
            while (now < microseconds && !IsOver)
            {
                phase += (long)Between(1, SpeedUpMilliseconds) * PollMicroseconds;
                now += PollMicroseconds;
                speed.Poll(phase / PulsePhase, now);
                if ((now - rowStart) / 1000 >= Column(0))
                {
                    NextRow();
                }
            }
        }

        public void Read(SampleSet sample)
        {
            speed.Read(sample, now);
            bool spike = Is(TruckTrace.Spikes) && noise.Next() < 2000;
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = spike ? noise.Next() - 32768 : Counts(channel) + noise.Bell(3);
            }
        }

        public Gear ReadGear() => Is(TruckTrace.NoGear) ? Gear.Unknown : (Gear)Column(5);

        public Step ReadStepMark() => !Is(TruckTrace.MarkedHold) ? Step.None : Column(5) == (int)Gear.Reverse ? Step.HoldReverse : Step.HoldForward;

        public int ReadOilTenthsCelsius() => 700 + (int)(now / 10000000);

        public void Show(Cue cue) => Cues++;

        private int Counts(int channel)
        {
            if (Is(TruckTrace.MainOpen) && channel == Channel.Main)
            {
                return 12;
            }

            if (Is(TruckTrace.ClutchShorted) && channel == Channel.Clutch)
            {
                return 18000;
            }

            if (Is(TruckTrace.ConverterSaturated) && channel == Channel.Converter)
            {
                return 16600;
            }

            int kilopascal = channel == Channel.Clutch ? ClutchKilopascal() : Between(channel + 1, SpeedUpMilliseconds / 2);
            return TruckPlan.ZeroCounts + (kilopascal * TruckPlan.SpanCounts / TruckPlan.KilopascalSpan(channel));
        }

        // A filling clutch stands at its springs' pressure for a while; an emptying one falls at once.
        private int ClutchKilopascal()
        {
            int target = Column(3);
            int since = (int)((now - rowStart) / 1000);
            bool fills = target > 2 * from[3] + 100;
            int before = fills ? target / 6 : from[3];
            int delay = fills ? ClutchFillMilliseconds : 0;
            return since < delay ? before
                : since < delay + ClutchRiseMilliseconds ? before + ((target - before) * (since - delay) / ClutchRiseMilliseconds)
                : target;
        }

        private int Between(int column, int milliseconds)
        {
            int since = (int)((now - rowStart) / 1000);
            int hunting = column == 1 && Is(TruckTrace.Hunting) ? (since % 1500 < 750 ? 900 : -900) : 0;
            int target = Column(column) + hunting;
            return since >= milliseconds ? target : from[column] + ((target - from[column]) * since / milliseconds);
        }

        private void NextRow()
        {
            System.Array.Copy(table, row * TruckTrace.Columns, from, 0, from.Length);
            row++;
            rowStart = now;
            if (IsOver && GoesRound)
            {
                row = 0;
            }
        }

        private int Column(int column) => IsOver ? 0 : table[(row * TruckTrace.Columns) + column];
    }
}
