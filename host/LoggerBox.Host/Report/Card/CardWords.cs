using System.Collections.Generic;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report.Card;

/// <summary>The card's own sentences.</summary>
internal static class CardWords
{
    public const string Kind = "Lack-of-power test: card for the truck";

    public const string First = "FIRST";
    public const string Clear = "WHEELS CLEAR";
    public const string ClearSetUp = "Engine off: drive axle on rated stands, other wheels chocked, hands off the mast";
    public const string Down = "TRUCK DOWN";
    public const string DownSetUp = "Engine off: down on its wheels, all chocked, parking brake on, space clear";

    public const string Pedal = "pedal";
    public const string Target = "from the sheet";
    public const string HowLong = "how long";

    public const string HosesTitle = "Which hose on which port";
    public const string HosesOrder = "Engine off and pressure gone before a port is opened.";

    public const string CuesTitle = "What the logger signals";
    public const string CuesLegend = "Word: the display. Bars, over 2 s: above the sounder, below the lamp; ▸ goes on.";

    public const string NoCue = "No word: the rpm; in a stall t and the seconds left. Any other word is the logger's own: finish, then look in the shop.";

    /// <summary>The button of the seat's unit, as hardware-notes/cues.md has it.</summary>
    public static string Button { get; } =
        $"Button, when it asks {Display(Cue.SetUpClearOrDown)}: short = truck down and chocked, long = wheels clear. Else: short = how many steps are missing, long = end of the session.";

    public const string Deferring =
        "The truck's own service manual, the site's rules and the judgement of a trained, authorised mechanic come before this card.";

    public static IReadOnlyList<string> Cautions(DataSheet sheet) =>
    [
        "Drive wheels off the floor: NEVER touch a lift or tilt lever, NEVER do the relief step. The truck would come down on you.",
        "Rated stands where the manual puts them, never a jack alone. Nobody near a turning wheel, nobody between truck and wall.",
        $"Let go at {Display(Cue.StallStop)} or {Display(Cue.Overspeed)}, or when the truck creeps or sounds wrong. {NoStall(sheet)}",
        "Hot oil burns; look for leaks with cardboard, never a hand. Ventilate. Never bridge a seat, brake or direction interlock. The truck's own manual and the site's rules come first.",
    ];

    public static string FirstSetUp(DataSheet sheet) => $"Truck down, chocked, brake on: hoses on, bled, oil warm{Oil(sheet.OilCelsius)}";

    public static string Figures(DataSheet sheet, string? fuel)
    {
        string version = sheet.Version.Length == 0 ? "" : $", version {sheet.Version}";
        string named = string.IsNullOrWhiteSpace(fuel) ? "" : $", fuel {fuel.Trim()}";
        string source = sheet.Source.Length == 0 ? "" : $"; {sheet.Source}";
        return $"Figures of {sheet.FileName}{version}{named}{source}";
    }

    public static string TimesNotGuarded(DataSheet sheet) =>
        $"{sheet.FileName}: the times of [stall] are outside of what the logger guards (limit_s {PlanBounds.ShortestStopMilliseconds / 1000} to {PlanBounds.LongestStopMilliseconds / 1000}, "
        + $"cooldown_s {PlanBounds.ShortestCooldownMilliseconds / 1000} to {PlanBounds.LongestCooldownMilliseconds / 1000} seconds): no card was made; look them up in the manual and correct the sheet.";

    /// <summary>A signal for who cannot see its drawing.</summary>
    public static string Heard(CardCue cue) => $"sounder {Spoken(cue.Sounder)}, lamp {Spoken(cue.Lamp)}{(cue.Repeats ? ", goes on" : "")}";

    private static string Oil(Limit? limit) => limit is { IsJudged: true } ? $": {Figure.Limit(limit.Min, limit.Max, "°C")} °C" : "";

    private static string Spoken(string pattern) => pattern.Length == 0 ? "off" : pattern.Replace('#', '-').Replace('.', ' ');

    private static string NoStall(DataSheet sheet) => sheet.Idle.Neutral?.Main?.Min is double main
        ? $"No stall while main at idle is below {sheet.Unit.Format(main)} ({Display(Cue.PressureTooLowToStall)})."
        : $"No stall with low main pressure ({Display(Cue.PressureTooLowToStall)}).";

    private static string Display(Cue cue) => CueTable.Find(cue)!.Display.Trim();
}
