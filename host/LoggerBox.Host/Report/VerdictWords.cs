using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report;

/// <summary>A verdict as a word and as a shape: a print without colours, or an eye that sees none, reads the same.</summary>
public static class VerdictWords
{
    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.In => "in limits",
        Verdict.Low => "LOW",
        Verdict.High => "HIGH",
        Verdict.CloseLow => "at the lower limit",
        Verdict.CloseHigh => "at the upper limit",
        Verdict.NotMeasured => "not measured",
        _ => "void",
    };

    public static string Symbol(Verdict verdict) => verdict switch
    {
        Verdict.In => "✓",
        Verdict.Low => "▼",
        Verdict.High => "▲",
        Verdict.CloseLow => "▽",
        Verdict.CloseHigh => "△",
        Verdict.NotMeasured => "–",
        _ => "✕",
    };

    public static bool IsOutside(Verdict verdict) => verdict is Verdict.Low or Verdict.High;

    public static bool IsClose(Verdict verdict) => verdict is Verdict.CloseLow or Verdict.CloseHigh;
}
