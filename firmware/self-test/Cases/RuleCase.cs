using LoggerBox.Protocol.Rules;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Codes there and back, every cell of the cause matrix, limits at and beside their edges.</summary>
    internal sealed class RuleCase : SelfTestCase
    {
        private const int Steps = 15;
        private const int Levels = 5;

        public RuleCase()
            : base("rules")
        {
        }

        public override void Execute()
        {
            Digest.AddText(RuleSet.Version);
            for (int i = 0; i < CauseCodes.Count; i++)
            {
                string text = CauseCodes.Text((Cause)i);
                Expect(CauseCodes.TryParse(text, out Cause cause) && (int)cause == i, "another cause came back");
                Digest.AddText(text);
            }

            for (int i = 0; i < Steps; i++)
            {
                string text = StepCodes.Text((Step)i);
                Expect(StepCodes.TryParse(text, out Step step) && (int)step == i, "another step came back");
                Digest.AddText(text);
                Digest.AddNumber((int)StepCodes.GearOf((Step)i));
            }

            Expect(!CauseCodes.TryParse("no-such-cause", out Cause _) && !StepCodes.TryParse("no-such-step", out Step _), "a code that is none was taken");
            ReadMatrix();
            JudgeLimits();
        }

        private void ReadMatrix()
        {
            for (int row = 0; row < CauseMatrix.RowCount; row++)
            {
                Digest.AddNumber((int)CauseMatrix.CauseOf(row));
                for (int column = 0; column < CauseMatrix.ObservationCount; column++)
                {
                    for (int level = 0; level < Levels; level++)
                    {
                        Digest.AddNumber(CauseMatrix.Points(row, (Observation)column, (Level)level));
                    }
                }
            }
        }

        private void JudgeLimits()
        {
            LimitBand band = new LimitBand();
            ExpectNumber((int)LimitOutcome.NotJudged, (int)band.Judge(5, 1), "no limit");
            band.HasMin = true;
            band.Min = 100;
            band.HasMax = true;
            band.Max = 200;
            for (int value = 90; value <= 210; value += 5)
            {
                Digest.AddNumber((int)band.Judge(value, 7));
            }

            ExpectNumber((int)LimitOutcome.In, (int)band.Judge(150, 7), "inside");
            ExpectNumber((int)LimitOutcome.CloseHigh, (int)band.Judge(200, 0), "on the limit");
        }
    }
}
