using System;
using System.Linq;
using System.Net;
using System.Text;
using LoggerBox.Host.Tables;

namespace LoggerBox.Host.Report.Html;

/// <summary>
/// Builds a page. Element and class names are ours; every text and attribute value passes through the encoder here,
/// so that nothing a customer, a sheet or a logger wrote can become markup.
/// </summary>
public sealed class Markup
{
    private static readonly Decimals Coordinate = new(2, AreKept: false);

    private readonly StringBuilder page = new();

    public Markup Open(string element, string? style = null, params (string Name, string Value)[] attributes)
    {
        page.Append('<').Append(element);
        if (style is not null)
        {
            Attribute("class", style);
        }

        foreach ((string name, string value) in attributes)
        {
            Attribute(name, value);
        }

        page.Append('>');
        return this;
    }

    public Markup Close(string element)
    {
        page.Append("</").Append(element).Append('>');

        // A line break inside a sentence would print as a space.
        if (element is not ("strong" or "em" or "span"))
        {
            page.Append('\n');
        }

        return this;
    }

    public Markup Text(string text)
    {
        page.Append(WebUtility.HtmlEncode(PlainText.Of(text)));
        return this;
    }

    /// <summary>A text of many lines as it is, for an element that keeps them.</summary>
    public Markup Lines(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        page.Append('\n').Append(WebUtility.HtmlEncode(string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select(line => string.Join('\t', line.Split('\t').Select(PlainText.Of))))));
        return this;
    }

    public Markup Element(string element, string text, string? style = null, params (string Name, string Value)[] attributes) =>
        Open(element, style, attributes).Text(text).Close(element);

    /// <summary>Text of this program itself, never of anyone else: style sheet and document frame.</summary>
    public Markup Own(string markup)
    {
        page.Append(markup);
        return this;
    }

    /// <summary>A coordinate in a drawing.</summary>
    public static string Number(double value) => Coordinate.Of(value);

    /// <summary>The same, for the long paths of curves.</summary>
    public static void AppendNumber(StringBuilder path, double value) => Coordinate.AppendTo(path, value);

    public override string ToString() => page.ToString();

    private void Attribute(string name, string value) =>
        page.Append(' ').Append(name).Append("=\"").Append(WebUtility.HtmlEncode(PlainText.Of(value))).Append('"');
}
