using System.Globalization;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>A reading against its limit as an observation; none where either is missing.</summary>
public static class LimitObservation
{
    /// <param name="name">What was read, as a sentence begins.</param>
    /// <param name="format">How its numbers are written.</param>
    /// <param name="printed">The limit that is told, where it is not the one that is graded against.</param>
    public static Observed? Of(Observation observation, string name, Measured? reading, Limit? limit, string format, string unit, double veryLow, double veryHigh, double weight = 1, Limit? printed = null)
    {
        if (reading is null || limit is not { IsJudged: true })
        {
            return null;
        }

        var levels = Grading.Against(reading, limit, veryLow, veryHigh);
        bool telling = LimitCheck.Judge(reading, limit) is Verdict.Low or Verdict.High;
        string value = reading.Value.ToString(format, CultureInfo.InvariantCulture);
        return new Observed(observation, levels, telling, Sentences.Reading(name, value, unit, Words.Bounds((printed ?? limit).Min, (printed ?? limit).Max, format, unit)), weight);
    }
}
