using System.CommandLine;
using LoggerBox.App;
using LoggerBox.App.Console;

using var stop = new StopSignal();
var terminal = Terminal.OfThisProcess();

Command[] verbs =
[
    DemoVerb.Declare(terminal, stop.Token),
    SimulateVerb.Declare(terminal, stop.Token),
    JobVerb.Declare(terminal),
    PortsVerb.Declare(terminal),
    WatchVerb.Declare(terminal, stop.Token),
    CalibrateVerb.Declare(terminal, stop.Token),
    FetchVerb.Declare(terminal),
    SessionsVerb.Declare(terminal),
    JudgeVerb.Declare(terminal),
    CompareVerb.Declare(terminal),
    HistoryVerb.Declare(terminal),
    LookVerb.Declare(terminal),
    ReportVerb.Declare(terminal),
    ExportVerb.Declare(terminal),
    ImportVerb.Declare(terminal),
    SheetVerb.Declare(terminal),
    ArchiveVerb.Declare(terminal),
    PlanVerb.Declare(terminal),
    ServeVerb.Declare(terminal, stop.Token),
];

return CommandLine.Run(verbs, args, terminal);
