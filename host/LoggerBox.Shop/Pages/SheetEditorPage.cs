using LoggerBox.Host.Report.Html;
using LoggerBox.Shop.Sheets;

namespace LoggerBox.Shop.Pages;

/// <summary>One data sheet as text, what the check says of it beside. Works without its script, which only checks while one types.</summary>
internal static class SheetEditorPage
{
    private const string Outline = """
        [truck]
        name = ""
        source = ""   # manual, section, page, who typed it, who checked it

        [engine]
        # idle_rpm        = { min = 640, max = 760 }
        # governed_rpm    = { nominal = 2450, tolerance = 60 }
        # relief_drop_rpm = { max = 260 }
        # stall_rpm       = { nominal = 1940, tolerance = 120 }

        [pressure]
        unit = "kPa"

        [pressure.idle]
        # main   = { min = 230, max = 560 }
        # clutch = { min = 180, max = 560 }

        [pressure.hold]
        rpm = 2000
        # main      = { min = 940, max = 1240 }
        # clutch    = { min = 900, max = 1240 }
        # converter = { min = 150 }

        [engagement]
        # time_s = { min = 0.35, max = 2.0 }

        """;

    public static SheetForm New => new("", Outline, "");

    /// <param name="said">What became of a save; empty where none was tried.</param>
    public static string Render(SheetForm form, string said, SheetCheck check) => Frame.Render(form.Name.Length == 0 ? "New data sheet" : form.Name, "/sheets", page =>
    {
        page.Element("h1", form.Name.Length == 0 ? "New data sheet" : form.Name);
        page.Element("p", said.Length > 0 ? said : check.Summary, check.IsGood ? "said" : "said trouble", ("role", "status"), ("id", "said"));
        page.Open("form", "sheet", ("method", "post"), ("action", "/sheets/save"), ("id", "sheet"));
        page.Open("input", null, ("type", "hidden"), ("name", "opened"), ("value", form.Opened));
        page.Open("p").Element("label", "File name", null, ("for", "name"));
        page.Open("input", null, ("id", "name"), ("name", "name"), ("value", form.Name), ("required", ""), ("maxlength", "80"), ("autocomplete", "off"), ("placeholder", "truck.toml")).Close("p");
        page.Open("div", "columns").Open("p").Element("label", "What the manual says", null, ("for", "text"));
        page.Open("textarea", null, ("id", "text"), ("name", "text"), ("rows", "18"), ("spellcheck", "false"), ("autocapitalize", "off"), ("aria-describedby", "said")).Lines(form.Text).Close("textarea").Close("p");
        WriteFindings(page, check);
        page.Close("div").Open("p", "actions").Element("button", "Save", null, ("type", "submit"));
        page.Element("a", "All data sheets", "button", ("href", "/sheets")).Close("p").Close("form");
    }, "sheet.js");

    private static void WriteFindings(Markup page, SheetCheck check)
    {
        page.Open("section", "findings", ("aria-labelledby", "findings-head")).Element("h2", "Check", null, ("id", "findings-head")).Open("ol", null, ("id", "findings"));
        foreach (SheetLine line in check.Lines)
        {
            page.Open("li").Element("button", $"Line {line.Line}", null, ("type", "button"), ("data-line", $"{line.Line}"));
            page.Element("strong", line.IsError ? "✕ error" : "△ doubtful").Element("span", line.Text).Close("li");
        }

        page.Close("ol").Close("section");
    }
}
