using LoggerBox.Host.Live;

namespace LoggerBox.App.Watching;

/// <summary>Where the readings go: a screen, plain lines, lines of JSON.</summary>
internal interface IWatchDisplay
{
    /// <summary>Gets each that arrives, and shows those that it has time for.</summary>
    void Show(LiveMoment moment);

    /// <summary>There are no readings, for this reason.</summary>
    void Tell(string sentence);
}
