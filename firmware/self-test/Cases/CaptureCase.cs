using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>A session of the whole logger; every record that it left is in the digest.</summary>
    internal abstract class CaptureCase : SelfTestCase
    {
        private readonly HoldRecord hold = new HoldRecord();
        private readonly SampleBlock block = new SampleBlock();
        private readonly int[] kinds = new int[32];

        protected CaptureCase(string name)
            : base(name)
        {
        }

        /// <summary>Sample sets that were read back.</summary>
        protected int Sets { get; private set; }

        /// <summary>Bit n: a hold of step n is in the session.</summary>
        protected uint Steps { get; private set; }

        protected int Count(RecordCode code) => kinds[(int)code];

        protected void ReadBack(RecordedRun run)
        {
            LoggedSession session = run.Log.Sessions[run.Log.Sessions.Count - 1];
            byte[] bytes = new byte[session.Length];
            ExpectNumber(session.Length, run.Log.Read(session, 0, bytes, 0, bytes.Length), "bytes of the session");
            RecordScan scan = new RecordScan(bytes, 0, bytes.Length);
            while (scan.MoveNext())
            {
                Envelope envelope = scan.Envelope;
                ExpectNumber(Digest.Records, envelope.Sequence, "sequence");
                Digest.Add(bytes, envelope.BodyOffset - RecordFormat.HeaderLength, envelope.RecordLength);
                Digest.Records++;
                kinds[(int)envelope.Code]++;
                Steps |= envelope.Code == RecordCode.Hold && scan.TryReadBody(hold) ? 1u << (int)hold.Step : 0;
                Sets += envelope.Code == RecordCode.SampleBlock && scan.TryReadBody(block) ? block.Count : 0;
            }

            ExpectNumber(0, scan.DamagedBytes + scan.UnfinishedBytes, "bytes that are no record");
            ExpectNumber(run.Steps, Sets, "sample sets");
            ExpectNumber(1, Count(RecordCode.SessionEnd), "session ends");
            Digest.AddNumber(run.Engine.Live.StepsCaptured);
        }
    }
}
