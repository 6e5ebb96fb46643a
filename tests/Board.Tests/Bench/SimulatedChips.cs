using System;
using LoggerBox.BoardParts.Clock;
using LoggerBox.BoardParts.Loops;
using LoggerBox.BoardParts.TwoWire;

namespace LoggerBox.Board.Tests.Bench;

/// <summary>Three converters and a clock chip on one bus, register by register after their data sheets, and what can go wrong with them.</summary>
public sealed class SimulatedChips : ITwoWire
{
    // What the converter has after its supply came: single conversions at +-2.048 V, standing still.
    private const int PowerOnConfiguration = 0x8583;
    private const double Ohm = 100;

    private readonly int[] configurations = [PowerOnConfiguration, PowerOnConfiguration, PowerOnConfiguration];

    /// <summary>Loop currents of main, clutch and converter, milliampere.</summary>
    public double[] Milliampere { get; } = [4, 4, 4];

    public bool[] IsUnplugged { get; } = new bool[3];

    /// <summary>A line is held down; so many recoveries free it.</summary>
    public bool IsStuck { get; set; }

    public int RecoveriesNeeded { get; set; } = 1;

    public int Recoveries { get; private set; }

    /// <summary>Transfers that were tried: on the platform each on a stuck bus costs a second.</summary>
    public int Transfers { get; private set; }

    public byte[] ClockRegisters { get; } = new byte[16];

    public void RestartConverters() => Array.Fill(configurations, PowerOnConfiguration);

    public TwoWireResult Write(int address, byte[] bytes, int count)
    {
        Transfers++;
        if (IsStuck)
        {
            return TwoWireResult.BusFailed;
        }

        if (address == Ds3231.Address)
        {
            Array.Copy(bytes, 1, ClockRegisters, bytes[0], count - 1);
            return TwoWireResult.Done;
        }

        int chip = address - LoopInputs.FirstAddress;
        if (IsUnplugged[chip])
        {
            return TwoWireResult.NoAnswer;
        }

        if (bytes[0] == Ads1115Register.Configuration)
        {
            configurations[chip] = (bytes[1] << 8) | bytes[2];
        }

        return TwoWireResult.Done;
    }

    public TwoWireResult ReadRegister(int address, byte register, byte[] into, int count)
    {
        Transfers++;
        if (IsStuck)
        {
            return TwoWireResult.BusFailed;
        }

        if (address == Ds3231.Address)
        {
            Array.Copy(ClockRegisters, register, into, 0, count);
            return TwoWireResult.Done;
        }

        int chip = address - LoopInputs.FirstAddress;
        if (IsUnplugged[chip])
        {
            return TwoWireResult.NoAnswer;
        }

        int word = register == Ads1115Register.Configuration ? configurations[chip] : Convert(chip);
        into[0] = (byte)(word >> 8);
        into[1] = (byte)word;
        return TwoWireResult.Done;
    }

    public void Recover()
    {
        Recoveries++;
        if (--RecoveriesNeeded <= 0)
        {
            IsStuck = false;
        }
    }

    // Gain bits 9 to 11: 1 is 125 uV a count, 2 is 62.5 uV. The input clips.
    private int Convert(int chip)
    {
        double microvolt = ((configurations[chip] >> 9) & 7) == 1 ? 125 : 62.5;
        return Math.Clamp((int)Math.Round(Milliampere[chip] * Ohm * 1000 / microvolt), -32768, 32767) & 0xFFFF;
    }
}
