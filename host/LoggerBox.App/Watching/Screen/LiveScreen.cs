using System;
using System.Runtime.InteropServices;
using System.Threading;
using LoggerBox.App.Console;
using LoggerBox.Host.Live;

namespace LoggerBox.App.Watching.Screen;

/// <summary>The terminal while readings are drawn on it: a page of its own, and afterwards the one that was there.</summary>
internal sealed class LiveScreen : IWatchDisplay, IDisposable
{
    private const string Enter = "\e[?1049h\e[?25l";

    // Reading keys switches the cursor keys to another mode; that goes back, too.
    private const string Leave = "\e[?1l\e>\e[?25h\e[?1049l";

    private const int UsualWidth = 80;
    private const int UsualHeight = 24;

    private readonly Pace pace = new(TimeSpan.FromMilliseconds(500), TimeProvider.System);
    private readonly Lock gate = new();
    private readonly Terminal terminal;
    private readonly PosixSignalRegistration? paused;
    private readonly PosixSignalRegistration? resumed;
    private readonly LiveMoment nothing;
    private WatchView view;
    private string[] drawn = [];
    private (int Width, int Height) size;
    private bool away;

    /// <param name="empty">What is shown before the first reading.</param>
    public LiveScreen(Terminal terminal, WatchView empty)
    {
        this.terminal = terminal;
        nothing = empty.Moment;
        view = empty;
        if (!OperatingSystem.IsWindows())
        {
            paused = PosixSignalRegistration.Create(PosixSignal.SIGTSTP, _ => GoAway());
            resumed = PosixSignalRegistration.Create(PosixSignal.SIGCONT, _ => ComeBack());
        }

        terminal.Out.Write(Enter);
    }

    public void Show(LiveMoment moment)
    {
        if (pace.IsDue(moment))
        {
            Draw(view with { Moment = moment, Sentence = "" });
        }
    }

    public void Tell(string sentence) => Draw(view with { Moment = nothing with { Captured = view.Moment.Captured }, Sentence = sentence });

    public void Dispose()
    {
        paused?.Dispose();
        resumed?.Dispose();
        GoAway();
    }

    private void Draw(WatchView next)
    {
        lock (gate)
        {
            view = next;
            if (away)
            {
                return;
            }

            bool clear = size != (size = Size());
            string[] lines = Frame.Lines(view, size.Width, size.Height);
            terminal.Out.Write((clear ? "\e[2J" : "") + ScreenChange.Between(clear ? [] : drawn, lines));
            drawn = lines;
        }
    }

    private void GoAway()
    {
        lock (gate)
        {
            if (!away)
            {
                away = true;
                terminal.Out.Write(Leave);
            }
        }
    }

    private void ComeBack()
    {
        lock (gate)
        {
            away = false;
            size = default;
            terminal.Out.Write(Enter);
        }
    }

    private static (int Width, int Height) Size()
    {
        int width = System.Console.WindowWidth;
        int height = System.Console.WindowHeight;
        return (width > 0 ? width : UsualWidth, height > 0 ? height : UsualHeight);
    }
}
