using LoggerBox.Host.Live;

namespace LoggerBox.App.Watching.Screen;

/// <summary>All that one frame is drawn from.</summary>
/// <param name="Sentence">Why there are no readings; empty where there are.</param>
/// <param name="Sheet">The data sheet's name; empty where none was given.</param>
/// <param name="HasKeys">Otherwise nothing but Ctrl-C ends it.</param>
internal sealed record WatchView(LiveMoment Moment, string Sentence, string Port, string Sheet, bool HasKeys);
