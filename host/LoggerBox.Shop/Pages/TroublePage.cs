namespace LoggerBox.Shop.Pages;

/// <summary>What could not be done, as the sentence that says what to do next.</summary>
internal static class TroublePage
{
    public static string Render(string sentence) => Frame.Head("That did not work") + Body(sentence);

    /// <summary>In place of a page whose head is sent already.</summary>
    public static string Body(string sentence) => Frame.Body("", page =>
    {
        page.Element("h1", "That did not work");
        page.Element("p", sentence, "trouble");
        page.Open("p").Element("a", "Back to the jobs", "button", ("href", "/")).Close("p");
    });
}
