namespace LoggerBox.Host.Report.Card;

/// <summary>Black on white, measured in points, so that the screen shows what the printer prints.</summary>
internal static class CardStyle
{
    public const string Text = """
        * { box-sizing:border-box; margin:0; padding:0; }
        body { color:#000; background:#fff; font:10.5pt/1.25 "DejaVu Sans","Segoe UI","Noto Sans","Liberation Sans",Arial,sans-serif; }
        main { position:relative; width:546pt; height:794pt; margin:0 auto; overflow:hidden; }
        h1 { font-size:20pt; line-height:24pt; width:370pt; white-space:nowrap; overflow:hidden; text-overflow:ellipsis; }
        .kind { position:absolute; top:8pt; right:0; font-size:9pt; }
        .figures { font-size:8pt; line-height:9.4pt; max-height:18.8pt; overflow:hidden; overflow-wrap:anywhere; }
        .cautions { list-style:none; border:2.2pt solid #000; padding:2pt 7pt 3pt; margin:2pt 0 4pt; font-size:10pt; line-height:12.6pt; }
        .cautions li:first-child { font-weight:700; font-size:11pt; }
        table { border-collapse:collapse; table-layout:fixed; width:100%; margin-bottom:2.5pt; }
        caption { background:#000; color:#fff; text-align:left; padding:1pt 5pt; font-size:10pt; line-height:13.4pt; white-space:nowrap; overflow:hidden; }
        caption strong { display:inline-block; width:104pt; font-size:11pt; }
        td, th { text-align:left; font-weight:400; border-bottom:.5pt solid #000; line-height:13pt; font-size:10.5pt; white-space:nowrap; overflow:hidden; text-overflow:ellipsis; padding-right:4pt; }
        th.name { width:162pt; font-weight:700; } td.number { width:22pt; padding-left:3pt; font-weight:700; }
        td.pedal { width:136pt; } td.target { width:122pt; font-weight:700; }
        .between td, .between th.name { background:#ddd; font-weight:400; }
        h2 { font-size:11pt; line-height:13pt; display:inline-block; }
        .hoses { display:flex; gap:12pt; }
        .hoses > div { flex:1; font-size:9.5pt; line-height:11.4pt; }
        dl { display:grid; grid-template-columns:auto 1fr; gap:0 8pt; line-height:14pt; margin-top:-13pt; }
        dt { font-weight:700; font-size:11pt; }
        .legend { font-size:8.5pt; display:inline; margin-left:8pt; }
        .cues { list-style:none; columns:2; column-gap:12pt; font-size:9.5pt; line-height:11.6pt; }
        .nocue { font-size:8.5pt; line-height:10pt; }
        .cues li { display:flex; gap:4pt; align-items:flex-start; break-inside:avoid; padding-bottom:1.2pt; }
        .cues svg { flex:none; } .cues span { flex:1; }
        .urgent { font-weight:700; }
        svg text { font-family:inherit; }
        footer { position:absolute; bottom:0; left:0; right:0; font-size:8.5pt; background:#fff; }
        @page { size:A4; margin:8mm 8.5mm; }
        @media print { body { -webkit-print-color-adjust:exact; print-color-adjust:exact; } }
        @media screen { main { margin:10mm auto; } }

        """;
}
