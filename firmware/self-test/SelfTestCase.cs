namespace LoggerBox.SelfTest
{
    /// <summary>One part of the logger: what it produced, and whether everything that must hold held.</summary>
    internal abstract class SelfTestCase
    {
        public readonly Digest Digest = new Digest();

        private readonly string name;
        private string? firstFault;

        protected SelfTestCase(string name)
        {
            this.name = name;
        }

        public bool IsPassed => firstFault == null;

        public string Line => name + ": " + Digest.Text + (Digest.Records > 0 ? " of " + Digest.Records.ToString() + " records" : "")
            + (firstFault == null ? ", passed" : ", FAILED: " + firstFault);

        public abstract void Execute();

        /// <summary>The first thing that does not hold is told.</summary>
        protected void Expect(bool holds, string otherwise)
        {
            if (!holds && firstFault == null)
            {
                firstFault = otherwise;
            }
        }

        protected void ExpectNumber(long expected, long actual, string what) =>
            Expect(expected == actual, what + " " + actual.ToString() + " in place of " + expected.ToString());
    }
}
