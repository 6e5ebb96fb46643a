using System.Device.Gpio;
using Iot.Device.Tm1637;
using LoggerBox.BoardParts.Cues;
using LoggerBox.BoardParts.Inputs;
using LoggerBox.Protocol.Cues;

namespace LoggerBox.BoardEsp32
{
    /// <summary>The magnet foot beside the seat: button, selector inputs, sounder (and beacon), lamp, and the four digits.</summary>
    internal sealed class Seat
    {
        private readonly GpioPin _forward;
        private readonly GpioPin _reverse;
        private readonly GpioPin _button;
        private readonly GpioPin _supplyLow;
        private readonly GpioPin _sounder;
        private readonly GpioPin _lamp;
        private readonly Tm1637 _display;
        private readonly char[] _shown = { '\0', '\0', '\0', '\0' };
        private bool _sounderOn;
        private bool _lampOn;

        public Seat(GpioController pins)
        {
            _forward = pins.OpenPin(Pins.Forward, PinMode.InputPullUp);
            _reverse = pins.OpenPin(Pins.Reverse, PinMode.InputPullUp);
            _button = pins.OpenPin(Pins.Button, PinMode.InputPullUp);
            _supplyLow = pins.OpenPin(Pins.SupplyLow, PinMode.InputPullUp);
            _sounder = pins.OpenPin(Pins.Sounder, PinMode.Output);
            _lamp = pins.OpenPin(Pins.Lamp, PinMode.Output);
            _display = new Tm1637(Pins.DisplayClock, Pins.DisplayData, PinNumberingScheme.Logical, pins, false);
            _display.ScreenOn = true;
        }

        /// <summary>All four pull their pin to ground when they are on.</summary>
        public void Read(InputLevels levels)
        {
            levels.Forward = !(bool)_forward.Read();
            levels.Reverse = !(bool)_reverse.Read();
            levels.Button = !(bool)_button.Read();
            levels.SupplyLow = !(bool)_supplyLow.Read();
        }

        public void Sound(SignalPlayer signals)
        {
            if (signals.SounderOn != _sounderOn)
            {
                _sounderOn = signals.SounderOn;
                _sounder.Write(_sounderOn);
            }

            if (signals.LampOn != _lampOn)
            {
                _lampOn = signals.LampOn;
                _lamp.Write(_lampOn);
            }
        }

        /// <summary>Writes the digits that changed: each takes the interpreter tens of milliseconds, so this has a thread of lowest priority.</summary>
        public void Show(SignalPlayer signals)
        {
            string text = signals.Text;
            for (int i = 0; i < _shown.Length && i < text.Length; i++)
            {
                if (text[i] != _shown[i])
                {
                    _shown[i] = text[i];
                    _display.Display((byte)i, (Character)DisplayWords.Of(text[i]));
                }
            }
        }
    }
}
