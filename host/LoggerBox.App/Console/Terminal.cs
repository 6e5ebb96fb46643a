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
    public Terminal(Stream output, Stream error, bool canDraw, bool colour, bool redrawsErrors)
    {
        Progress = new ProgressLine(Writer(error), redrawsErrors);
        Out = Writer(new CleanLineStream(output, Progress));
        Error = Writer(new CleanLineStream(error, Progress));
        CanDraw = canDraw;
        Colour = colour;
    }

    public TextWriter Out { get; }

    public TextWriter Error { get; }

    /// <summary>A person looks at it, and its cursor can be moved.</summary>
    public bool CanDraw { get; }

    public bool Colour { get; }

    public ProgressLine Progress { get; }

    public static Terminal OfThisProcess()
    {
        bool canMove = Environment.GetEnvironmentVariable("TERM") is not (null or "dumb");
        bool canDraw = !System.Console.IsOutputRedirected && canMove;
        return new Terminal(
            System.Console.OpenStandardOutput(),
            System.Console.OpenStandardError(),
            canDraw,
            canDraw && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
            redrawsErrors: !System.Console.IsErrorRedirected && canMove);
    }

    public static bool IsClosedPipe(IOException error) => (error.HResult & 0xffff) == BrokenPipe;

    private static StreamWriter Writer(Stream stream) => new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true, NewLine = "\n" };
}
