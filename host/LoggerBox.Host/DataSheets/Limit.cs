namespace LoggerBox.Host.DataSheets;

/// <summary>
/// A limit of the data sheet in the unit it was printed in. Min and Max are the bounds that follow from it
/// (a nominal with its tolerance is already turned into them); both null: recorded, not judged.
/// </summary>
/// <param name="Line">Line in the data sheet file, from 1.</param>
public sealed record Limit(double? Min, double? Max, double? Nominal, int Line)
{
    public bool IsJudged => Min is not null || Max is not null;

    /// <summary>Whether two limits, in whatever lines and words, ask for the same.</summary>
    public static bool SameBounds(Limit? one, Limit? other) => one?.Min == other?.Min && one?.Max == other?.Max;

    /// <summary>The figures as the manual prints them, without unit: "2450 ± 60", "940 to 1240", "at least 150".</summary>
    public string Printed { get; init; } = "";

    /// <summary>The same in the second printed unit, with it ("136 to 180 psi"); empty where there is none.</summary>
    public string PrintedAlso { get; init; } = "";
}
