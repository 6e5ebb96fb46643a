using LoggerBox.Host.Live;

namespace LoggerBox.Shop.Live;

/// <summary>One figure and its limit, ready to be shown.</summary>
/// <param name="Band">The limit and where the reading stands to it, in words; empty where the sheet gives none for this step.</param>
/// <param name="Standing">"inside", "LOW" or "HIGH"; a single reading is no verdict.</param>
/// <param name="Places">Left and right edge of the limits and the reading between them, in hundredths of the drawing's width; null: nothing to draw.</param>
internal sealed record ShownFigure(string Text, string Band, string Standing, double[]? Places)
{
    public static ShownFigure None { get; } = new(LiveFigure.NoReading, "", "", null);

    public static ShownFigure Of(LiveFigure figure) => new(
        figure.Text,
        figure.Band,
        figure.Standing,
        figure.Scale is { } scale ? [100 * scale.Left, 100 * scale.Right, 100 * scale.Tick] : null);
}
