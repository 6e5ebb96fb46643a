namespace LoggerBox.Host.Report.Html;

/// <summary>The report's look, for the screen and for A4 paper, in colour and without.</summary>
internal static class StyleSheet
{
    public const string Text = """
        :root { --ink:#14181c; --soft:#50585f; --rule:#c9d0d6; --wash:#f1f3f5; }
        * { box-sizing:border-box; }
        body { margin:0; background:#dfe4e7; color:var(--ink); font:14px/1.42 "Segoe UI","Noto Sans","Liberation Sans",Arial,sans-serif; }
        main { max-width:210mm; margin:8mm auto; padding:13mm 14mm; background:#fff; box-shadow:0 1px 6px #0003; }
        h1 { margin:0; font-size:25px; line-height:1.15; }
        h2 { margin:26px 0 8px; font-size:15px; letter-spacing:.02em; color:var(--ink); border-bottom:2px solid var(--ink); padding-bottom:3px; break-after:avoid; }
        h3 { margin:0 0 3px; font-size:14.5px; }
        p { margin:3px 0; }
        table { border-collapse:collapse; width:100%; }
        td, th { text-align:left; vertical-align:top; padding:3px 8px 3px 0; }
        .number { text-align:right; font-variant-numeric:tabular-nums; white-space:nowrap; }
        .soft { color:var(--soft); }
        .small { font-size:12px; }
        .top { display:flex; justify-content:space-between; align-items:flex-end; gap:20px; border-top:9px solid var(--ink); padding-top:10px; }
        .top .right { text-align:right; white-space:nowrap; }
        .release { margin:12px 0 0; padding:4px 14px; border:1px solid var(--ink); overflow-wrap:anywhere; }
        .release.not { border:4px double var(--ink); } .release.not strong { font-size:18px; letter-spacing:.08em; margin-right:8px; }
        .outcome { margin:14px 0 4px; padding:10px 14px; border:2px solid var(--ink); border-left-width:12px; break-inside:avoid; }
        .outcome strong { display:block; font-size:18px; line-height:1.25; }
        .outcome.open { border-style:dashed; border-left-style:solid; } .outcome.out { border-width:3px; border-left-width:12px; }
        .facts { display:grid; grid-template-columns:1fr 1fr; column-gap:26px; margin-top:12px; }
        .facts div { display:flex; gap:8px; border-bottom:1px solid var(--rule); padding:3px 0; min-height:25px; }
        .facts .wide { grid-column:1 / -1; }
        .facts span:first-child { flex:0 0 118px; color:var(--soft); font-size:12.5px; }
        .facts span:last-child { font-weight:600; overflow-wrap:anywhere; }
        .facts .loud span { font-weight:700; color:var(--ink); } .facts .loud { border:2px solid var(--ink); padding:3px 6px; }
        h2.part { margin:12px 0 0; padding:0; border:0; font-size:12.5px; letter-spacing:0; break-after:avoid; }
        .front .facts { margin-top:2px; }
        .windows { display:grid; grid-template-columns:1fr 1fr; gap:6px 12px; margin-top:10px; } .windows svg { break-inside:avoid; }
        .suspect { border:1px solid var(--rule); border-left:5px solid var(--ink); padding:8px 12px; margin:8px 0; break-inside:avoid; }
        .suspect ul { margin:2px 0 4px; padding-left:18px; }
        .suspect .label { font-size:12px; color:var(--soft); margin-top:4px; }
        .suspect .next { margin-top:6px; padding:6px 9px; background:var(--wash); }
        .rank { display:inline-block; min-width:23px; margin-right:8px; padding:0 6px; border-radius:11px; background:var(--ink); color:#fff; text-align:center; }
        .readings th { font-size:12px; font-weight:600; color:var(--soft); border-bottom:1px solid var(--ink); }
        .readings th.number { text-align:right; }
        .readings td { border-bottom:1px solid #e6eaed; }
        .readings tr { break-inside:avoid; }
        .readings .step th { padding-top:9px; font-size:inherit; font-weight:700; color:var(--ink); border-bottom:1px solid var(--rule); break-after:avoid; }
        .readings tbody { break-inside:avoid; } .readings thead td { border-bottom:1px solid var(--ink); }
        .readings.outside { width:auto; } .readings.outside td { padding-right:22px; }
        .readings .limit { padding-left:14px; white-space:nowrap; }
        .readings .band { width:126px; padding-right:12px; vertical-align:middle; }
        .readings .verdict { white-space:nowrap; }
        .verdict.out, .verdict.close { font-weight:700; } .verdict.open { color:var(--soft); }
        svg { display:block; width:100%; height:auto; }
        svg text { font-family:inherit; }
        .plot { break-inside:avoid; margin:6px 0 2px; } .story { overflow-wrap:anywhere; }
        .notes li { margin:3px 0; break-inside:avoid; }
        .notes ul, ul.notes { margin:2px 0; padding-left:18px; }
        .void { font-weight:700;  }
        .caution { border:2px solid var(--ink); padding:8px 14px; margin-top:12px; break-inside:avoid; }
        .signatures { display:grid; grid-template-columns:1fr 1fr 1fr; gap:26px; margin-top:46px; break-inside:avoid; }
        .signatures div { border-top:1px solid var(--ink); padding-top:4px; font-size:12px; color:var(--soft); }
        footer { margin-top:20px; padding-top:6px; border-top:1px solid var(--rule); font-size:11px; color:var(--soft); overflow-wrap:anywhere; }
        @page { size:A4; margin:14mm 14mm 15mm; }
        @media print {
          body { background:#fff; font-size:11.5px; -webkit-print-color-adjust:exact; print-color-adjust:exact; }
          main { max-width:none; margin:0; padding:0; box-shadow:none; }
          .readings td { padding-top:1.5px; padding-bottom:1.5px; } .readings .step th { padding-top:5px; padding-bottom:1.5px; }
          .front { break-after:page; font-size:10.5px; } .front .facts div { padding:1px 0; min-height:16px; } .front .facts span:first-child { font-size:10.5px; flex-basis:100px; }
           .signatures { margin-top:34px; } .front .outcome { margin-top:8px; padding:6px 12px; } .front .caution { margin-top:6px; padding:3px 10px; font-size:9.5px; border-width:1px; }
          h2 { margin-top:17px; font-size:13px; } h2.part { margin-top:6px; font-size:11px; } h1 { font-size:21px; } .outcome strong { font-size:15px; }
        }
        @media (max-width:640px) { main { margin:0; padding:16px; } .facts { grid-template-columns:1fr; } .readings .band { display:none; } }

        """;
}
