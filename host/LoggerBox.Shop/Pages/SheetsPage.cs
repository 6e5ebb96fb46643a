using System;
using System.Collections.Generic;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>The shop's data sheets.</summary>
internal static class SheetsPage
{
    public static string Render(IReadOnlyList<string> names) => Frame.Render("Data sheets", "/sheets", page =>
    {
        page.Element("h1", "Data sheets");
        page.Element("p", "What each truck's own service manual says. A sheet is saved only when nothing in it is wrong.", "remark");
        page.Open("ul", "choices");
        foreach (string name in names)
        {
            page.Open("li").Element("a", name, "button", ("href", "/sheets/edit?name=" + Uri.EscapeDataString(name))).Close("li");
        }

        page.Close("ul").Open("p", "actions").Element("a", "New data sheet", "button", ("href", "/sheets/edit")).Close("p");
    });
}
