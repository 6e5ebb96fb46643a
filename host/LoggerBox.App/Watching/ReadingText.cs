using System.Linq;
using LoggerBox.Host.Live;
using LoggerBox.Host.Report;

namespace LoggerBox.App.Watching;

/// <summary>A reading and its limit as words.</summary>
internal static class ReadingText
{
    /// <summary>"Main 61.2 psi (45.0 to 80.0: inside)".</summary>
    public static string Of(LiveFigure figure)
    {
        string reading = $"{figure.Name} {figure.Text} {Figure.Unit(figure.Unit)}";
        string beside = Beside(figure);
        return beside.Length == 0 ? reading : $"{reading} ({beside})";
    }

    /// <summary>"45.0 to 80.0: inside"; empty where no limit is given.</summary>
    public static string Beside(LiveFigure figure) => string.Join(": ", new[] { figure.Band, figure.Standing }.Where(word => word.Length > 0));
}
