using System;
using LoggerBox.SelfTest.Cases;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest
{
    /// <summary>
    /// Runs the logger's code over built-in traces and says what came out of it. The same sources run on a PC and on the interpreter:
    /// both must say the same up to the line PASS; the times after it are each one's own.
    /// </summary>
    internal static class Program
    {
        private static void Main()
        {
            SelfTestCase[] cases =
            {
                new FramingCase(), new RecordCase(), new MessageCase(), new DamageCase(), new EncodingCase(), new RuleCase(), new CueCase(), new PlanCase(),
                new SpeedCase(), new WholeTestCase(), new FaultyRunCase(), new DrivingDayCase(), new UnevenCase(), new StorageCase(), new LinkCase(),
            };
            Digest all = new Digest();
            int passed = 0;
            Console.WriteLine("LoggerBox self-test, " + cases.Length.ToString() + " cases");
            for (int i = 0; i < cases.Length; i++)
            {
                cases[i].Execute();
                passed += cases[i].IsPassed ? 1 : 0;
                all.AddNumber(cases[i].Digest.Value);
                all.Records += cases[i].Digest.Records;
                Console.WriteLine(cases[i].Line);
            }

            Console.WriteLine("all: " + all.Text + " of " + all.Records.ToString() + " records");
            Console.WriteLine((passed == cases.Length ? "PASS " : "FAIL ") + passed.ToString() + "/" + cases.Length.ToString());
            Console.WriteLine(SampleSetTime.Measured(new PartedTruck(TruckTrace.WholeTest)));
        }
    }
}
