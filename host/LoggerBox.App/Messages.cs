using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Live;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App;

/// <summary>All text that a user of the program meets, but for what a part says of its own errors.</summary>
internal static class Messages
{
    public const string WhatItIs =
        "LoggerBox tests and judges lift trucks that lack power: engine speed and three transmission pressures, recorded, judged against the truck's data sheet, reported.";

    public const string DemoVerb = "Test and judge an invented truck, from the pickup to the printed report.";
    public const string SimulateVerb = "Run a virtual logger and truck that one can connect to. The first line printed is the port.";
    public const string JobVerb = "Work orders.";
    public const string JobNewVerb = "Write a new work order.";
    public const string JobShowVerb = "Show a work order with its sessions.";
    public const string JobAddVerb = "Add sessions to a work order.";
    public const string JobCloseVerb = "Close a work order, with who releases the truck or plainly without: nothing can be added to it any more.";
    public const string PortsVerb = "List the serial ports of this computer.";
    public const string FetchVerb = "Fetch what the logger, or its pulled card, holds into the archive; safe to repeat.";
    public const string SessionsVerb = "List what the archive holds.";
    public const string JudgeVerb = "Judge a job, a session or a trace file against a data sheet.";
    public const string ReportVerb = "Write the printable report of a job, a session or a trace file.";
    public const string ExportVerb = "Write a session as a trace file (.csv or .parquet), or a whole job as one file (.lbjob) that import reads in another archive.";
    public const string ImportVerb = "Take a trace file of any instrument, or a job file, into the archive.";
    public const string SheetVerb = "Data sheets of trucks.";
    public const string SheetCheckVerb = "Say what is wrong in a data sheet, line by line.";
    public const string HistoryVerb = "One truck over the years: each reading of all its jobs, its change and its drift.";
    public const string HistoryArgument = "The truck's serial, as its jobs have it.";
    public const string LookVerb = "Look through a recording of normal work for the engagement or stall that is unlike the others.";
    public const string NeverFilled = "never filled";
    public const string Odd = "unlike the others";
    public const string SheetFromVerb = "Draw limits from the shop's own healthy jobs of one kind of truck, marked as such.";
    public const string SheetListVerb = "The versions of data sheets that the archive's jobs were written with.";
    public const string SheetFromArgument = "Jobs of healthy trucks, three at least (J1, J2, ...).";
    public const string SheetOutOption = "Where the data sheet goes (.toml).";
    public const string PlanVerb = "The logger's plan.";
    public const string PlanSendVerb = "Make the logger's plan from a data sheet and send it.";

    public const string WatchVerb = "Live readings in the terminal until q or Ctrl-C; one line a second where the output is no terminal.";

    public const string ServeVerb = "The shop page for a browser on this computer. The first line printed is its address; open it.";

    public const string ArchiveOption = "The archive: an SQLite file, or a PostgreSQL database (postgresql://USER@HOST/DATABASE); without it the file in your data folder.";
    public const string JsonOption = "Answer in JSON, for other programs.";
    public const string SheetOption = "The truck's data sheet (.toml).";
    public const string PortOption = "Serial device, or tcp:127.0.0.1:N.";
    public const string CardOption =
        "Folder of the card that was pulled from the logger; the log in it is sessions.log. It is only read: it may be write-protected, and the logger learns at its next fetch by cable that the archive has its sessions.";
    public const string UnitOption = "Unit of pressures; without it the data sheet's.";
    public const string CompareVerb = "Compare a truck before and after a repair, reading by reading.";
    public const string BeforeArgument = "Job id, session id, or a trace file (.csv): before the repair.";
    public const string AfterArgument = "The same, after the repair.";
    public const string WhatArgument = "Job id, session id, or a trace file (.csv).";
    public const string JobArgument = "The job's id.";
    public const string SessionArgument = "Session ids, as `sessions` lists them.";
    public const string ImportArgument = "The trace file (.csv, .parquet) or the job file (.lbjob).";
    public const string SheetArgument = "The data sheet (.toml).";
    public const string ReportOutOption = "Where the report goes: a page (.html) or sheets of paper (.pdf).";
    public const string ExportOutOption = "Where the trace (.csv, .parquet) or the job (.lbjob) goes.";
    public const string PulsesOption = "Pickup edge times in seconds, one a line, in place of the rpm column.";
    public const string PulsesPerRevolutionOption = "Pickup pulses per engine revolution; 0.5 for the plug lead of a four-stroke.";
    public const string HttpOption = "Port of the page on 127.0.0.1; without it, a free one.";
    public const string LoggerOption = "The logger to watch: a serial device, or tcp:127.0.0.1:N.";
    public const string SheetFolderOption = "Where the shop's data sheets are kept; without it, the folder sheets beside the archive.";
    public const string CauseOption = "The cause that is put into the truck.";
    public const string SeedOption = "The same seed gives the same session.";
    public const string DemoOutOption = "Where archive, sheet and report go.";
    public const string TcpOption = "Listen on a TCP port of this computer instead of a serial line.";
    public const string StoreOption = "The logger's card: a file, or a folder in which it is sessions.log; survives a restart.";
    public const string LinkOption = "A link to the port that keeps its name over restarts.";
    public const string SpeedOption = "fast: the finished session is there at once; real: the test runs as long as it would at the truck.";
    public const string BaudOption = "Send no faster than a serial cable of so many bits a second; without it, as fast as the line takes it.";
    public const string TruckOption = "The truck, as the customer calls it.";
    public const string SerialOption = "The truck's serial number.";
    public const string HoursOption = "Hour meter.";
    public const string FuelOption = "Fuel in use.";
    public const string ComplaintOption = "The complaint in the customer's words.";
    public const string TechnicianOption = "Who tests.";
    public const string RoleOption = "Whether the sessions were recorded before or after the repair.";
    public const string FoundOption = "What was found.";
    public const string CorrectionOption = "What was done.";
    public const string AltitudeOption = "Altitude of the site, metres.";
    public const string AirOption = "Intake air, degrees Celsius.";
    public const string OilLevelOption = "Transmission oil level, as found.";
    public const string OilLookOption = "How the oil looks and smells.";
    public const string OilOption = "Transmission oil temperature during the test, degrees Celsius.";
    public const string OilReadOption = "How the oil temperature was read.";

    public const string NoPorts = "This computer shows no serial port. Plug the logger's cable in and ask again.";
    public const string Stopped = "Stopped before the end.";

    public const string NoLinkToTcp = "--link goes with a serial line, not with --tcp";
    public const string AlreadyOnTheCard = "The card holds this session already: nothing is recorded again. Ctrl-C ends it.";
    public const string RecordingInRealTime = "The test at the truck has begun and takes several minutes. Ctrl-C ends it.";
    public const string SessionIsThere = "The session is recorded and can be fetched. Ctrl-C ends it.";
    public const string PortOrCard = "fetch needs --port P or --card DIR, and not both";
    public const string CardShorter = "the file has become shorter";
    public const string LoggerEmpty = "The logger holds no finished session.";

    public const string DemoComplaint = "No power: crawls up the ramp with a load (invented)";
    public const string DemoTechnician = "the demo";
    public const string DemoCaptured = "What the logger captured, step by step (the hold that counts):";
    public const string DemoHealthy = "Nothing was put into the truck, and nothing is suspected.";

    public static string DemoBegins(string cause, string code, int seed) => $"Demo on an invented truck, seed {seed}. Put into it: {cause} [{code}]";

    public static string DemoRecorded(double seconds, double took) =>
        $"  truck    a technician works through the test in {seconds:F0} s of virtual time; the logger records ({took:F1} s)";

    public static string DemoDownloaded(string port, long bytes, string session, double took) =>
        $"  line     {port}, {bytes} bytes of records fetched over it ({took:F1} s)\n  archive  session {session}, confirmed to the logger";

    public static string DemoNamed(string code) => $"Put into the truck: {code}. It is named first.";

    public static string DemoNotNamed(string code) => $"Put into the truck: {code}. It is NOT what is named first: please report this with cause and seed.";

    public static string DemoTook(double seconds) => $"Done in {seconds:F1} s.";

    public static string FolderTrouble(string path, string reason) => $"The folder {path} cannot be made ({reason.TrimEnd('.')}): name another with --out.";

    public static string CardTrouble(string path, string reason) => $"The card {path} cannot be used ({reason.TrimEnd('.')}): name another file with --store.";

    public static string UnknownCause(string code, string known) => $"'{code}' is no cause. Known are: {known}.";

    public static string Fetched(TakenSession session) => Taken(session, session.Confirmed ? "fetched and confirmed" : "fetched");

    public static string TakenFromCard(TakenSession session) => Taken(session, "read from the card");

    public static string LineCut(string port, IntakeProgress? last, double seconds) =>
        $"The line on {port} was cut{(last is null ? "" : $" in session {last.SessionNumber}, of which {last.Received} of {last.Length} bytes are here")}: it may take {seconds:0} s to come back.";

    public static string ClockSet(string port, string was) => $"The clock of the logger on {port} {was}: it was set. Sessions that it has recorded keep their dates.";

    public static string ClockNotSet(string port, string reason) => $"The clock of the logger on {port} could not be set. {reason}";

    public static string NoCardFolder(string folder) => $"There is no folder {folder}: put the logger's card into the reader, and name the folder under which it shows.";

    public static string NoLogIn(string folder) => $"There is no logger's log in {folder}: on a card it is the file {Cards.CardFile.LogName}; name the card's own folder.";

    public static string SeveralLogs(string folder, IEnumerable<string?> names) =>
        $"There are several logs in {folder} ({string.Join(", ", names)}) and none is called {Cards.CardFile.LogName}: name one of the files with --card.";

    public static string NoLog(string path) => $"{path} is no logger's log: nothing was read; check that it is the card of a logger, and keep it as it is.";

    public static string NoPlainLog(string path) =>
        $"{path} is empty or no plain file: nothing was read; a logger's log is never empty, so copy it again, or name the card's own folder.";

    public static string CardUnreadable(string path, string reason) =>
        $"{path} cannot be read ({reason}): try another card reader, or put the card back into the logger and fetch by cable.";

    public static string CardClosed(string path, string reason) => $"The card's {path} cannot be opened ({reason.TrimEnd('.')}): check that you may read it.";

    public static string CardPulled(string folder, uint session, string reason) =>
        $"The card in {folder} failed while session {session} was read ({reason}): what had been read is kept; put the card in again and repeat the command.";

    public static string CardFailed(string path, int places, string reason, long lost) =>
        $"{path} could not be read in {places} places ({reason}), {lost} bytes of sessions are missing: all else is in the archive; try another card reader, or put the card back into the logger and fetch by cable.";

    public static string CardEmpty(string path) => $"{path} holds no session.";

    public static string LaterCard(string path, int version) =>
        $"{path} holds records of version {version}, this program reads version {RecordFormat.Version}: nothing was fetched; install the newer program.";

    public static string LaterSession(uint number, int version) =>
        $"Session {number} was left on the card: its records are of version {version}, this program reads version {RecordFormat.Version}.";

    public static string TooLongOnCard(uint number, uint length) => $"Session {number} was left on the card: it has {length} bytes, more than any session.";

    public static string GapsOnCard(uint number, long bytes, int places) =>
        $"Session {number}: {bytes} bytes in {(places == 1 ? "one place" : places + " places")} can no longer be read from the card; where the archive had none, they are a gap of that length.";

    public static string BreaksOff(uint number) =>
        $"Session {number}, the last on the card, breaks off without an end: the power was cut or the card pulled while it was recorded, or its log was copied in part; if it is a copy, copy it again.";

    public static string PagesBetweenSessions(int pages) =>
        $"{(pages == 1 ? "One page" : pages + " pages")} between the sessions on the card cannot be read: what stood there is not known.";

    public static string PlanSent(string name) => $"The logger has the plan \"{name}\".";

    public static string Imported(string file, string id, bool isNew) => isNew ? $"{id}  imported from {PlainText.Of(file)}" : $"{id}  {PlainText.Of(file)} is in the archive already";

    public static string SheetFinding(string file, int line, string text, bool error) => $"{file}, line {line}: {(error ? "" : "doubtful: ")}{text}";

    public static string SheetRefused(string file, int line, int errors) =>
        $"{file} is refused: {(errors == 1 ? "1 error" : errors + " errors")}, the first in line {line}. Correct the lines listed and check again.";

    public static string SheetGood(string file, int doubts) =>
        doubts == 0 ? $"{file}: nothing wrong." : $"{file}: can be used; {(doubts == 1 ? "1 line deserves" : doubts + " lines deserve")} a look.";

    public static string OutOfRange(string option, double lowest, double highest) => $"{option} takes a number from {lowest} to {highest}";

    public static string EmptyName(string option) => $"{option} was given an empty name";

    public static string JobLine(string id, bool closed, string release) => $"Job {id}{(closed ? " (closed)" : "")}: {release}";

    public static string JobHolds(string id, IReadOnlyList<string> sessions) => $"Job {id} holds {string.Join(", ", sessions)}.";

    public static string ArchiveEmpty(string path) => $"The archive {path} holds no session yet: fetch or import one.";

    public static string NoSheet(string what) => $"There is no data sheet to judge {what} by: name the truck's with --sheet FILE, or write a job with one.";

    public static string ReportEnding(string path) => $"{path} is neither a .html nor a .pdf file: the report is a page or sheets of paper; end the name in one of these.";

    public static string JobFileOfAJob(string what) => $"{what} is no job: a .lbjob file holds a whole job; name one (`loggerbox job show` lists them), or end the file's name in .csv for a session's trace.";

    public static string NothingToJobFile(string option, string path) => $"{option} says nothing to the job file {path}, which holds records as the logger made them: leave it out.";

    public static string ImportedJob(string file, ImportedJob job)
    {
        string number = job.Id == job.IdInFile ? "" : $" ({job.IdInFile} where it comes from, which is another job here)";
        string sessions = job.Sessions.Count == 0 ? "no sessions" : string.Join(", ", job.Sessions);
        return job.Changed ? $"{job.Id}  imported from {PlainText.Of(file)}{number}: {sessions}" : $"{job.Id}  {PlainText.Of(file)} is in the archive already{number}: {sessions}";
    }

    public static string NameOneSession(string job, IReadOnlyList<string> sessions) =>
        sessions.Count == 0 ? ArchivedSubjects.Empty(job) : $"Job {job} holds several sessions ({string.Join(", ", sessions)}): export one of them by its id.";

    public static string HistoryTooShort(string archive, string serial, int jobs) =>
        $"{archive} holds {(jobs == 0 ? "no job" : "1 job")} with sessions of a truck with serial {serial}; a history needs two. Check the serial with `loggerbox job show`.";

    public static string HistoryOf(string serial, IReadOnlyList<string> visits) => $"Truck {serial}: {string.Join(", ", visits)}.";

    public static string LookFound(string title, int engagements, int stalls, int odd, int alone) =>
        $"{title}: {engagements} {(engagements == 1 ? "engagement" : "engagements")}, {stalls} {(stalls == 1 ? "stall" : "stalls")}; {(alone == engagements + stalls ? "too few to compare" : odd == 0 ? "none unlike the others" : $"{odd} unlike the others")}.";

    public static string LookTooFew(int alone, int fewest) =>
        $"{alone} of them {(alone == 1 ? "has" : "have")} fewer than {fewest} alike (same gear, at idle or above it) and {(alone == 1 ? "was" : "were")} not compared: record more of the day's work.";

    public static string AboveIdle(string kind) => kind + ", above idle";

    public static string LookMore(int count) => $"and {count} more that are like the others: --json lists all.";

    public static string SheetFromTooFew(int jobs, int least) =>
        $"Limits need at least {least} different jobs, each named once; {jobs} {(jobs == 1 ? "is" : "are")} named. Name more healthy trucks of that kind: the more there are, the narrower the limits.";

    public static string SheetFromUnnamed(string id) => $"Job {id} does not say which kind of truck it is of: limits can be drawn from trucks of one kind only. Leave it out, or write the job again with --truck.";

    public static string TruckKind(string truck, string fuel, double holdRpm) =>
        FormattableString.Invariant($"{truck}{(fuel.Length == 0 ? "" : ", " + fuel)}, held at {holdRpm:0.#} rpm");

    public static string SheetFromOther(string id, string kind, string first, string firstKind) =>
        $"Job {id} is of another kind of truck ({kind}) than job {first} ({firstKind}): limits can be drawn from trucks of one kind, fuel and hold speed only. Leave it out.";

    public static string SheetFromSuspect(string id, string cause, string reason) =>
        $"Job {id} is no job of a healthy truck: {cause}{(reason.Length == 0 ? "" : $" ({reason.TrimEnd('.')})")}. Leave it out, or repair the truck and name the job after the repair.";

    public static string SheetFromWithoutSheet(string id) =>
        $"Job {id} was judged by no limit of a data sheet: nobody knows whether its truck was healthy. Leave it out, or write the job again with --sheet.";

    public static string SheetFromCold(string id) =>
        $"Job {id} was done with cold oil: its pressures are no warm truck's. Leave it out, or repeat the test warm.";

    public static string Serving(string archive) => $"The shop page shows {archive}. Open the address above in a browser on this computer; Ctrl-C ends it.";

    public static string WatchClockName(LiveMoment moment) =>
        moment.StallSecondsLeft is not null ? "Stall, seconds left" : moment.CooldownSecondsLeft is not null ? "Cool down, seconds left" : "";

    public static string WatchDoing(LiveMoment moment) => $"Gear: {moment.GearWord}{(moment.Doing.Length == 0 ? "" : $"   Step: {moment.Doing}")}";

    public static string WatchNow(LiveMoment moment) => moment.CueText.Length == 0 ? "" : $"Now: {moment.CueText}";

    public static string WatchCaptured(LiveMoment moment) =>
        $"Captured: {(moment.Captured.Count == 0 ? "nothing yet" : string.Join("; ", moment.Captured.Select(step => StepWords.Of(step))))}";

    public static string WatchFoot(string port, string sheet, bool hasKeys) =>
        $"{(hasKeys ? "q ends" : "Ctrl-C ends")}   {port}{(sheet.Length == 0 ? "" : $"   limits of {sheet}")}";

    public static string Wrote(string path) => $"Wrote {path}";

    public static string RangeOption(string channel) => $"Range of the {channel} transducer's 4 to 20 mA, for an mA column.";

    public static string UnknownUnit(string word) => $"'{word}' is no unit of pressure: psi, kPa, bar or kgfcm2.";

    public static string NoVerb(string word) => $"'{word}' is no verb";

    public static string WrongCommandLine(string what, string verb) =>
        $"{InPlainWords(what)}. `loggerbox {(verb.Length == 0 ? "" : verb + " ")}--help` shows how it is written.";

    public static string FileTrouble(string what) => $"A file could not be read or written: {what}";

    public static string OwnFault(Exception error) =>
        $"loggerbox met a fault of its own ({error.GetType().Name}: {error.Message}). Nothing was changed after it; please report it with the command you typed.";

    private static string Taken(TakenSession session, string how) =>
        $"{session.Id}  session {session.Identity.SessionNumber} of the logger, {(session.IsNew ? how : "in the archive already")}";

    private static string InPlainWords(string what) => string.Join(' ', what.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        .Replace(" as expected type 'System.Int32'", ": a whole number belongs there", StringComparison.Ordinal)
        .Replace(" as expected type 'System.Nullable`1[System.Double]'", ": a number belongs there", StringComparison.Ordinal)
        .TrimEnd('.');
}
