using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>What a printed report says beside the judgement's own sentences, the same on every kind of paper.</summary>
public static class ReportWords
{
    public const string Kind = "Lack-of-power test";

    public const string Cautions =
        "This report names suspects, not culprits. The truck's own service manual, local safety law and the judgement of a licensed technician come before it. "
        + "Before any further check: truck down and wheels chocked for stalls, drive wheels clear and the truck on rated stands for tests in gear, load lowered, nobody near; "
        + "engine off and pressure gone before a hose is touched; hot oil burns; ventilate against exhaust gas. Never bypass a seat, brake or direction interlock.";

    public const string Uncertainty =
        "± is the expanded uncertainty for 95 % (k = 2, Student's t where readings are few): scatter of the hold, zero and span of the transducers as stated for the instrument. "
        + "A reading inside or outside a limit by less than that is too close to call and accuses nobody by itself.";

    public const string SharedRanks = "Suspects of the same rank cannot be told apart by these readings; the check beside each one does it.";

    public const string Measured =
        "Measured: the settled mean, after taking off the engine-off reading. ±: expanded uncertainty, 95 %. The bar shows the limits (grey) and the reading with its uncertainty.";

    public const string Telling = "±: 95 %, of the change. Readings at or outside a limit first; all of them stand on the pages for the file.";

    public const string Windows =
        "Main pressure solid, clutch pressure dashed, converter pressure dotted; thick grey in the same dashes: their limits. Above them the engine speed. Shaded: what was judged. Time in seconds.";

    public const string Traces =
        "Shaded: the holds that were judged, by their numbers. Ticks at the upper edge: single readings far from all around them (interference), left out of the line as of every value. "
        + "Pressures as recorded, before the engine-off reading is taken off. Time in seconds.";

    public const string OutsideLimits = "Outside their limits";

    // A story longer than this would push what must be signed off the customer's page.
    private const int LongestOnTheFront = 420;
    private const string InFull = " … (in full at the end)";

    /// <summary>What a fact says on the first page: a long story ends in a word's end there, and stands in full at the end.</summary>
    public static string Short(string text) => text.Length <= LongestOnTheFront ? text : text[..CutOf(text)].TrimEnd() + InFull;

    /// <summary>The stories that the first page has no room for.</summary>
    public static IReadOnlyList<ReportFact> LongFacts(ReportDocument report) =>
        [.. report.Front.SelectMany(section => section.Facts).Where(fact => fact.Value is { Length: > LongestOnTheFront })];

    /// <summary>For the customer: what was measured outside a limit, as far as one page has room, and how many more there are.</summary>
    public static (IReadOnlyList<ReadingRow> Rows, int More) Outside(Judgement judgement)
    {
        const int most = 6;
        ReadingRow[] outside = [.. ReadingTable.Of(judgement).Where(row => row.Verdict is { } verdict && VerdictWords.IsOutside(verdict))];
        return ([.. outside.Take(most)], Math.Max(0, outside.Length - most));
    }

    public static string More(int count) => FormattableString.Invariant($"{count} more on the pages for the file.");

    /// <summary>The curves of a recording, in the order in which they stand under each other.</summary>
    public static IReadOnlyList<(int Channel, string Name)> Curves { get; } =
        [(Channel.Speed, "engine speed"), (Channel.Main, "main pressure"), (Channel.Clutch, "clutch pressure"), (Channel.Converter, "converter pressure")];

    /// <summary>Where who answers for it signs.</summary>
    public static IReadOnlyList<string> Signatures { get; } = ["Technician, date", "Checked by, date", "Customer, date"];

    public static string NoCurve(string name) => $"No {name} was recorded.";

    /// <summary>Some suspects cannot be told apart: <see cref="SharedRanks"/> is to be said.</summary>
    public static bool HasSharedRanks(Judgement judgement) => judgement.Suspects.GroupBy(suspect => suspect.Rank).Any(rank => rank.Count() > 1);

    /// <summary>The truck on the work order, which tells it from others of its kind; the data sheet's only where there is none.</summary>
    public static string Truck(ReportDocument report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Truck.Length > 0 ? report.Truck : report.Judgement.Truck.Length > 0 ? report.Judgement.Truck : "Truck not named";
    }

    /// <summary>UTC with the shop's own clock beside it: who reads the paper lives by the second, the archive by the first.</summary>
    public static string Moment(DateTimeOffset time)
    {
        string local = time.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        string offset = time.Offset.ToString(time.Offset < TimeSpan.Zero ? @"\-hh\:mm" : @"\+hh\:mm", CultureInfo.InvariantCulture);
        string utc = time.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return time.Offset == TimeSpan.Zero ? utc + " UTC" : $"{local} (UTC{offset}; {utc} UTC)";
    }

    public static string Started(ReportRecording recording)
    {
        ArgumentNullException.ThrowIfNull(recording);
        return recording.StartedUtc is DateTimeOffset utc ? Moment(utc.ToOffset(recording.ShopOffset))
            : recording.Session.Header.LoggerId == 0 ? "undated: the recording of another instrument does not say when"
            : "undated: the logger's clock was not set";
    }

    /// <summary>What it comes to, with its sign: the headline, how many readings, what to do first.</summary>
    public static (string Headline, IReadOnlyList<string> Lines) Outcome(Judgement judgement)
    {
        string symbol = judgement.Suspects.Count > 0 ? "▶ " : Report.Outcome.IsOpen(judgement) ? "△ " : "✓ ";
        List<string> lines = [Report.Outcome.Explanation(judgement)];
        if (judgement.Suspects.Count > 0)
        {
            lines.Add($"{DoFirst}: {FirstChecks(judgement)}");
        }

        lines.AddRange(Warnings(judgement));

        return (symbol + Report.Outcome.Headline(judgement), lines);
    }

    /// <summary>The gear, and of which recording where there are several.</summary>
    public static string Engaged(JudgedEngagement engagement) =>
        StepWords.Of(engagement.Gear) + (engagement.Recording is int recording ? FormattableString.Invariant($", recording {recording}") : "");

    public const string DoFirst = "Do first";

    /// <summary>The check of each suspect of the first rank: what cannot be told apart is looked for one after the other.</summary>
    public static string FirstChecks(Judgement judgement) =>
        string.Join(" Then: ", judgement.Suspects.Where(suspect => suspect.Rank == 1).Select(suspect => suspect.Next).Distinct());

    /// <summary>What the logger warned of, what must not be done again, and where before and after may be the wrong way round: nobody looks for these at the end of a report.</summary>
    public static IEnumerable<string> Warnings(Judgement judgement) =>
        judgement.Validity.Where(note => note.Code is GuardNotes.NoStall or GuardNotes.Warned or Report.Outcome.RolesInDoubt).Select(note => note.Text);

    /// <summary>Voids first, each with its step.</summary>
    public static IEnumerable<(bool IsVoid, string Step, string Text)> Notes(Judgement judgement) => judgement.Validity
        .OrderBy(note => note.Effect == ValidityEffect.Note)
        .Select(note => (note.Effect == ValidityEffect.Void, note.Step == Step.None ? "" : StepWords.Of(note.Step), note.Text));

    public static string Verdict(ReadingRow row) =>
        row.Verdict is Verdict spoken ? VerdictWords.Symbol(spoken) + " " + VerdictWords.Word(spoken) : "recorded";

    public static string Instrument(ReportRecording recording, PressureUnit unit)
    {
        SessionHeader header = recording.Session.Header;
        string who = header.LoggerId == 0 ? "recording of another instrument" : $"logger {header.LoggerId:X8}, session {header.SessionNumber}";
        string rate = header.SampleIntervalMicroseconds == 0 ? "unevenly spaced samples" : $"{1e6 / header.SampleIntervalMicroseconds:0.#} sample sets a second";
        string pickup = $"{header.PickupPulses / (double)Math.Max((ushort)1, header.PickupRevolutions):0.###} pickup pulses per revolution";
        string accuracy = header.Pressures.Max(channel => channel.AccuracyPascal) is int pascal and > 0
            ? $"stated error of the pressures up to {Figure.WithUnit(pascal / unit.InPascal(), unit.Code())}"
            : "error of the pressure channels not stated";
        return $"{recording.Name}: {who}, {recording.Session.Samples.Count} sample sets, {rate}, {pickup}, {accuracy}.";
    }

    /// <summary>How it was made; what proves it unchanged stands on the first page.</summary>
    public static string Proof(ReportDocument report) =>
        $"Rules {report.Judgement.Rules}. Pressures in {Figure.Unit(report.Judgement.Unit)}. Verdicts can be computed again from the records at any time.";

    /// <summary>"Stall, forward: engine speed".</summary>
    public static string Place(ReportChange row) => $"{StepWords.Of(row.Step)}: {Words.Quantity(row.Quantity)}";

    public static string Place(ReadingRow row) => $"{StepWords.Of(row.Step)}: {Words.Quantity(row.Quantity)}";

    public static string Number(double? value, string unit) => value is double number ? Figure.Of(number, unit) : "–";

    public static string NumberWithUnit(double? value, string unit) => value is double number ? Figure.WithUnit(number, unit) : "–";

    public static string Signed(double? change, string unit) => change is > 0 ? "+" + Figure.Of(change.Value, unit) : Number(change, unit);

    private static int CutOf(string text)
    {
        int space = text.LastIndexOf(' ', LongestOnTheFront);
        int cut = space > LongestOnTheFront / 2 ? space : LongestOnTheFront;
        return char.IsHighSurrogate(text[cut - 1]) ? cut - 1 : cut;
    }

    public static string Capital(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
    }
}
