namespace LoggerBox.Host.Report;

/// <summary>Whether the truck may go back to work, as every report says it.</summary>
/// <param name="Headline">"NOT RELEASED", or by whom and when.</param>
/// <param name="Detail">What is missing, or what else has to be known.</param>
public sealed record ReleaseNote(bool IsReleased, string Headline, string Detail)
{
    public const string NotReleased = "NOT RELEASED";
}
