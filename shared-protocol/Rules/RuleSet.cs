namespace LoggerBox.Protocol.Rules
{
    /// <summary>Which rules judged: it changes with every change of matrix, thresholds or words that can change a judgement; RULES.md says how.</summary>
    public static class RuleSet
    {
        public const string Version = "2026.7";
    }
}
