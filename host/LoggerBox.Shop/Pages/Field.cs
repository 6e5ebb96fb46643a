using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>One line to write in, with its name above it.</summary>
internal static class Field
{
    /// <param name="prefix">Of its id: a page may have the field in several forms.</param>
    /// <param name="most">Letters.</param>
    public static void Write(Markup page, string prefix, string name, string label, string most, bool isWanted = false)
    {
        string id = $"{prefix}-{name}";
        page.Open("p").Element("label", label, null, ("for", id));
        (string, string)[] attributes = [("id", id), ("name", name), ("value", ""), ("maxlength", most), ("autocomplete", "off")];
        page.Open("input", null, isWanted ? [.. attributes, ("required", "")] : attributes).Close("p");
    }

    /// <summary>A choice of a few.</summary>
    public static void WriteChoice(Markup page, string prefix, string name, string label, params (string Value, string Words)[] choices)
    {
        string id = $"{prefix}-{name}";
        page.Open("p").Element("label", label, null, ("for", id)).Open("select", null, ("id", id), ("name", name));
        foreach ((string value, string words) in choices)
        {
            page.Element("option", words, null, ("value", value));
        }

        page.Close("select").Close("p");
    }
}
