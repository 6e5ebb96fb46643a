using System;
using System.IO;
using System.Text;

namespace LoggerBox.App.Console;

/// <summary>Results go out, messages go to error; colour only where a person looks at it.</summary>
internal sealed class Terminal
{
    // EPIPE, as .NET carries it in the HResult: the reader of our output (head, less) has gone.
    private const int BrokenPipe = 32;

    /// <param name="redrawsErrors">Standard error is a terminal whose cursor can be moved.</param>
    public Terminal(TextWriter output, TextWriter error, bool canDraw, bool colour, bool redrawsErrors)
    {
        Out = output;
        Error = error;
        CanDraw = canDraw;
        Colour = colour;
        Progress = new ProgressLine(error, redrawsErrors);
    }

    public TextWriter Out { get; }

    public TextWriter Error { get; }

    /// <summary>A person looks at it, and its cursor can be moved.</summary>
    public bool CanDraw { get; }

    public bool Colour { get; }

    public ProgressLine Progress { get; }

    public static Terminal OfThisProcess()
    {
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        bool canMove = Environment.GetEnvironmentVariable("TERM") is not (null or "dumb");
        bool canDraw = !System.Console.IsOutputRedirected && canMove;
        return new Terminal(
            new StreamWriter(System.Console.OpenStandardOutput(), utf8) { AutoFlush = true, NewLine = "\n" },
            new StreamWriter(System.Console.OpenStandardError(), utf8) { AutoFlush = true, NewLine = "\n" },
            canDraw,
            canDraw && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
            redrawsErrors: !System.Console.IsErrorRedirected && canMove);
    }

    public static bool IsClosedPipe(IOException error) => (error.HResult & 0xffff) == BrokenPipe;
}
