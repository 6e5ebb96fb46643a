using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Live;

/// <summary>One quantity as it reads just now, and the limit that the sheet gives for what is being done.</summary>
/// <param name="Value">Null: there is no reading.</param>
/// <param name="Unit">Its code, also the limit's.</param>
/// <param name="Limit">Null: none is given for this step.</param>
public sealed record LiveFigure(string Name, double? Value, string Unit, Limit? Limit)
{
    public const string NoReading = "–";

    public string Text => Value is double value ? Figure.Of(value, Unit) : NoReading;

    /// <summary>"620 to 770"; empty where there is none.</summary>
    public string Band => Limit is { IsJudged: true } ? Figure.Limit(Limit.Min, Limit.Max, Unit) : "";

    /// <summary>Where it stands beside its limit, for a drawing; null where there is nothing to draw.</summary>
    public BandScale? Scale => BandScale.Of(Value, 0, Limit?.Min, Limit?.Max);

    /// <summary>Where the needle stands: a single reading proves nothing, so this is no verdict. Empty where nothing can be said.</summary>
    public string Standing =>
        Value is not double value || Limit is not { IsJudged: true } ? ""
        : value < Limit.Min ? "LOW"
        : value > Limit.Max ? "HIGH"
        : "inside";
}
