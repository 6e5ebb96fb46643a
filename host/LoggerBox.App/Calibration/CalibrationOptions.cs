using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Linq;
using System.Threading;
using LoggerBox.App.Console;
using LoggerBox.Host;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Traces;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Calibration;

/// <summary>What a calibration must be told: by options, and on a terminal by answers.</summary>
internal sealed class CalibrationOptions(Terminal terminal, CancellationToken stop)
{
    private const int LongestText = 120;

    private readonly Option<string[]> channels = new("--channel") { Description = CalibrateMessages.ChannelOption, HelpName = "main|clutch|converter" };
    private readonly Option<string[]> at = new("--at") { Description = CalibrateMessages.AtOption, HelpName = "PRESSURE" };
    private readonly Option<string?> reference = Text("--reference", CalibrateMessages.ReferenceOption);
    private readonly Option<string?> certificate = Text("--certificate", CalibrateMessages.CertificateOption);
    private readonly Option<string?> certified = Day("--certified", CalibrateMessages.CertifiedOption);
    private readonly Option<string?> referenceDue = Day("--reference-due", CalibrateMessages.ReferenceDueOption);
    private readonly Option<string?> due = Day("--due", CalibrateMessages.DueOption);
    private readonly Option<string?> by = Text("--by", CalibrateMessages.ByOption);
    private readonly Option<string[]> transducers = new("--transducer") { Description = CalibrateMessages.TransducerOption, HelpName = "CHANNEL=TEXT" };
    private readonly Option<string[]> ranges = new("--range") { Description = CalibrateMessages.RangeOption, HelpName = "CHANNEL=RANGE" };
    private readonly Option<double?> grade = new("--class") { Description = CalibrateMessages.ClassOption, HelpName = "PERCENT" };
    private readonly Option<int?> patience = SharedOptions.Between(new Option<int?>("--patience") { Description = CalibrateMessages.PatienceOption, HelpName = "SECONDS" }, 5, 3600);
    private readonly Option<bool> yes = new("--yes") { Description = CalibrateMessages.YesOption };

    public void AddTo(Command verb)
    {
        channels.AcceptOnlyFromAmong([.. ChannelNames.All]);
        grade.Validators.Add(result =>
        {
            // Written so that NaN fails.
            if (!result.Errors.Any() && result.GetValueOrDefault<double?>() is double percent && !(percent is >= 0.01 and <= 5))
            {
                result.AddError(Messages.OutOfRange("--class", 0.01, 5));
            }
        });
        foreach (Option option in (Option[])[channels, at, reference, certificate, certified, referenceDue, due, by, transducers, ranges, grade, patience, yes])
        {
            verb.Options.Add(option);
        }
    }

    /// <exception cref="UserErrorException">Something is missing and nobody can be asked, or the reference's certificate has run out.</exception>
    public CalibrationOrder Order(ParseResult line, PressureUnit? unit, DateOnly today)
    {
        bool asks = !line.GetValue(yes);
        if (asks && System.Console.IsInputRedirected)
        {
            throw new UserErrorException(CalibrateMessages.YesWithoutTerminal, usage: true);
        }

        Questions? questions = System.Console.IsInputRedirected ? null : new Questions(terminal, stop);
        string[] missing = [.. ((Option<string?>[])[reference, certificate, certified, referenceDue, by]).Where(option => line.GetValue(option) is null).Select(option => option.Name)];
        if (questions is null && missing.Length > 0)
        {
            throw new UserErrorException(CalibrateMessages.WantsWords(missing), usage: true);
        }

        (List<double> pascal, PressureUnit? named) = Pressures(line.GetValue(at) ?? []);
        string Answer(Option<string?> option) => line.GetValue(option) ?? questions!.Text(option.Description!.TrimEnd('.'));
        DateOnly Date(Option<string?> option) => line.GetValue(option) is string day ? Parsed(day) : questions!.Day(option.Description!.TrimEnd('.'));
        string against = Answer(reference);
        var order = new CalibrationOrder(
            [.. (line.GetValue(channels) is { Length: > 0 } some ? some : [.. ChannelNames.All]).Distinct().Select(ChannelNames.Find)],
            pascal, unit ?? named ?? PressureUnit.Kilopascal, against, Answer(certificate), Date(certified), Date(referenceDue),
            line.GetValue(due) is string again ? Parsed(again) : today.AddYears(1), Answer(by),
            PerChannel(line.GetValue(transducers) ?? [], "--transducer"),
            PerChannel(line.GetValue(ranges) ?? [], "--range").ToDictionary(pair => pair.Key, pair => ChannelRange.Parse(pair.Value)),
            line.GetValue(grade), TimeSpan.FromSeconds(line.GetValue(patience) ?? 120), asks);
        return order.ReferenceDue < today ? throw new UserErrorException(CalibrateMessages.ReferenceOverdue(PlainText.Of(against), order.ReferenceDue.ToString("yyyy-MM-dd")))
            : order.Certified > today ? throw new UserErrorException(CalibrateMessages.DayToCome(certified.Name), usage: true)
            : order.Due <= today ? throw new UserErrorException(CalibrateMessages.DayGone(due.Name), usage: true)
            : order;
    }

    private static (List<double> Pascal, PressureUnit? Unit) Pressures(string[] words)
    {
        List<double> pascal = [];
        PressureUnit? unit = null;
        foreach (string word in words)
        {
            if (!PressureText.TryParse(word, out double one, out PressureUnit? named))
            {
                throw new UserErrorException(CalibrateMessages.WantsPressure(PlainText.Of(word)), usage: true);
            }

            pascal.Add(one);
            unit ??= named;
        }

        return (pascal, unit);
    }

    private static Dictionary<int, string> PerChannel(string[] words, string option)
    {
        Dictionary<int, string> given = [];
        foreach (string word in words)
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            int channel = equals > 0 ? ChannelNames.Find(word[..equals]) : 0;
            if (channel == 0 || !IsText(word) || !given.TryAdd(channel, word[(equals + 1)..].Trim()))
            {
                throw new UserErrorException(CalibrateMessages.WantsChannel(option, PlainText.Of(word)), usage: true);
            }
        }

        return given;
    }

    private static bool IsText(string text) => text.Length is > 0 and <= LongestText && !text.Any(char.IsControl);

    private static Option<string?> Text(string name, string description)
    {
        var option = SharedOptions.NotEmpty(new Option<string?>(name) { Description = description, HelpName = "TEXT" });
        option.Validators.Add(result =>
        {
            if (result.Tokens.Any(token => token.Value.Length > 0 && !IsText(token.Value)))
            {
                result.AddError($"{name} wants up to {LongestText} signs of text");
            }
        });
        return option;
    }

    private static Option<string?> Day(string name, string description)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = "YYYY-MM-DD" };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Any(token => !Questions.TryDay(token.Value, out _)))
            {
                result.AddError(CalibrateMessages.WantsDay(name));
            }
        });
        return option;
    }

    private static DateOnly Parsed(string day) => Questions.TryDay(day, out DateOnly parsed) ? parsed : throw new ArgumentException(day, nameof(day));
}
