using System;
using nanoFramework.Hardware.Esp32;
using nanoFramework.Runtime.Native;

namespace LoggerBox.BoardEsp32
{
    /// <summary>
    /// What is on this board, printed at each start. A package and a firmware whose checksums differ do not run together: the numbers here
    /// are the ones that this release was compiled for (firmware 1.17.0, github.com/nanoframework/nf-interpreter at a3e8139).
    /// </summary>
    internal static class BootReport
    {
        public const string Version = "0.1.0";

        private static readonly string[] Packages =
        {
            "mscorlib 1.17.11 1549C856",
            "nanoFramework.Runtime.Events 1.11.39 0EAB00C9",
            "nanoFramework.Runtime.Native 1.7.11 0EAE898B",
            "nanoFramework.System.Text 1.3.42 8E6EB73D",
            "System.IO.Streams 1.1.96 managed",
            "System.IO.FileSystem 1.1.93 1777E2FE",
            "System.IO.Ports 1.1.139 B798CE30",
            "System.Device.Gpio 1.1.62 097E7BC5",
            "System.Device.I2c 1.1.29 FA806D33",
            "nanoFramework.Hardware.Esp32 1.6.40 6A20A689",
            "Iot.Device.Tm1637 1.2.862 managed",
        };

        public static void Print(ushort bootCount, uint loggerId)
        {
            Console.WriteLine("LoggerBox firmware " + Version + ", logger " + loggerId.ToString() + ", start " + bootCount.ToString());
            Console.WriteLine(SystemInfo.Platform + " " + SystemInfo.TargetName + ", firmware " + SystemInfo.Version.ToString());
            for (int i = 0; i < Packages.Length; i++)
            {
                Console.WriteLine(Packages[i]);
            }

            NativeMemory.GetMemoryInfo(NativeMemory.MemoryType.All, out uint total, out uint free, out uint largest);
            Console.WriteLine("memory " + total.ToString() + ", free " + free.ToString() + ", largest " + largest.ToString());
        }
    }
}
