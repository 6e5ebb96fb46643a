namespace LoggerBox.App;

/// <summary>What is said around the card for the truck.</summary>
internal static class CardMessages
{
    public const string Verb = "One page to laminate for the truck: steps in order, set-up, target speeds, hoses and ports, what each signal means.";
    public const string OutOption = "Where the card goes: a page (.html) or a sheet of paper (.pdf); without it, to the terminal.";

    public static string Ending(string path) => $"{path} is neither a .html nor a .pdf file: the card is a page or a sheet of paper; end the name in one of these.";
}
