using System;
using System.Globalization;
using System.IO;

namespace LoggerBox.Host.Report.Card;

/// <summary>The card for a terminal.</summary>
public static class CardText
{
    public static void Write(TextWriter output, TruckCard card)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(card);
        output.WriteLine(PlainText.Of(card.Truck));
        output.WriteLine(PlainText.Of(card.Figures));
        output.WriteLine();
        output.WriteLine("! " + string.Join("\n! ", card.Cautions));
        output.WriteLine(CardWords.Deferring);
        output.WriteLine();
        WriteSteps(output, card);
        WriteHoses(output, card);
        WriteCues(output, card);
    }

    private static void WriteSteps(TextWriter output, TruckCard card)
    {
        var table = new TextTable("rllll");
        foreach (CardStage stage in card.Stages)
        {
            table.Add($"{stage.Name}: {stage.SetUp}");
            foreach (CardStep step in stage.Steps)
            {
                table.Add(step.Number?.ToString(CultureInfo.InvariantCulture) ?? "-", step.Name, step.Pedal, step.Target, step.HowLong);
            }
        }

        table.WriteTo(output);
    }

    private static void WriteHoses(TextWriter output, TruckCard card)
    {
        output.WriteLine();
        output.WriteLine(CardWords.HosesTitle);
        foreach (CardHose hose in card.Hoses.Hoses)
        {
            output.WriteLine($"  {hose.Channel}  {hose.Name}: {hose.Port}");
        }

        output.WriteLine("  " + CardWords.HosesOrder);
    }

    private static void WriteCues(TextWriter output, TruckCard card)
    {
        output.WriteLine();
        output.WriteLine(CardWords.CuesTitle + " (# is a tenth of a second on)");
        var table = new TextTable("llll");
        table.Add("display", "sounder", "lamp", "means");
        foreach (CardCue cue in card.Cues)
        {
            string onwards = cue.Repeats ? " ..." : "";
            table.Add(cue.Display, cue.Sounder + onwards, cue.Lamp + onwards, cue.Means);
        }

        table.WriteTo(output);
        output.WriteLine("  " + CardWords.Button);
    }
}
