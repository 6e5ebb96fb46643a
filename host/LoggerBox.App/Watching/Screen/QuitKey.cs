using System;
using System.Threading;

namespace LoggerBox.App.Watching.Screen;

/// <summary>Asks to stop when q is pressed. The wait for a key ends with the process: nothing else can end it.</summary>
internal static class QuitKey
{
    public static bool CanBeRead => !System.Console.IsInputRedirected;

    public static void Watch(CancellationTokenSource stop)
    {
        // The first look sets the terminal up for keys: before the screen is drawn, not into it.
        _ = System.Console.KeyAvailable;
        new Thread(() => Wait(stop)) { IsBackground = true }.Start();
    }

    private static void Wait(CancellationTokenSource stop)
    {
        try
        {
            while (System.Console.ReadKey(intercept: true).Key != ConsoleKey.Q)
            {
            }

            stop.Cancel();
        }
        catch (InvalidOperationException)
        {
            // The terminal's input has ended: Ctrl-C is left.
        }
    }
}
