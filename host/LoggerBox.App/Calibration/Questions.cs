using System;
using System.Globalization;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.App.Console;
using LoggerBox.Host;

namespace LoggerBox.App.Calibration;

/// <summary>Asks whoever sits at the terminal.</summary>
internal sealed class Questions(Terminal terminal, CancellationToken stop)
{
    /// <summary>Asks until something is answered.</summary>
    public string Text(string question)
    {
        while (true)
        {
            string answer = Line(question + ": ").Trim();
            if (answer.Length > 0)
            {
                return answer;
            }
        }
    }

    public DateOnly Day(string question)
    {
        while (true)
        {
            if (TryDay(Line(question + " (2026-03-31): ").Trim(), out DateOnly day))
            {
                return day;
            }
        }
    }

    /// <summary>Enter goes on.</summary>
    /// <exception cref="UserErrorException">Left with q.</exception>
    public void Enter(string question)
    {
        if (Line(question).Trim() is "q" or "Q")
        {
            throw new UserErrorException(CalibrateMessages.Left);
        }
    }

    public bool Yes(string question) => Line(question).Trim() is "yes" or "y";

    public static bool TryDay(string text, out DateOnly day) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day);

    private string Line(string question)
    {
        terminal.Out.Write(question);

        // A read from a terminal cannot be broken off; whoever presses Ctrl-C meanwhile does not wait for it.
        Task<string?> read = Task.Run(System.Console.In.ReadLine);
        read.Wait(stop);
        return read.Result ?? throw new UserErrorException(CalibrateMessages.Left);
    }
}
