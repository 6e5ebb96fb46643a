using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>A card that was cut, spoiled, filled and begun again: what was committed comes back, nothing else does.</summary>
    internal sealed class StorageCase : SelfTestCase
    {
        private const int CardBytes = 48 * 1024;

        private readonly CutStore card = new CutStore(CardBytes);
        private readonly SampleBlock block = new SampleBlock();
        private readonly SampleSet sample = new SampleSet();
        private readonly SessionEnd end = new SessionEnd();
        private readonly Noise noise = new Noise(29);
        private readonly byte[] bytes = new byte[CardBytes];
        private long now;

        public StorageCase()
            : base("storage")
        {
        }

        public override void Execute()
        {
            RecordLog log = Open();
            Begin(log);
            Expect(Store(log) && Store(log) && log.EndSession(end), "a session could not be stored");
            Cut();
            Spoil();
            Fill();
            ConfirmAll();
        }

        // Power fails during the third block: the first two are there.
        private void Cut()
        {
            RecordLog log = Open();
            Begin(log);
            Expect(Store(log) && Store(log), "a block could not be stored");
            uint committed = log.Sessions[1].Length;
            card.BytesLeft = 700;
            Expect(!Store(log), "a block was stored without power");
            card.BytesLeft = -1;
            log = Open();
            ExpectNumber(2, log.Sessions.Count, "sessions");
            Expect(!log.Sessions[1].Ended && log.Sessions[1].Length >= committed, "a committed block is gone");
            Tell(log);
        }

        private void Spoil()
        {
            RecordLog log = Open();
            uint length = log.Sessions[0].Length;
            card.Spoil(log.Sessions[0].StartPage + 2);
            log = Open();
            ExpectNumber(2, log.Sessions.Count, "sessions beside a spoiled page");
            ExpectNumber(length, log.Sessions[0].Length, "length with a gap in it");
            Tell(log);
        }

        private void Fill()
        {
            RecordLog log = Open();
            Begin(log);
            int blocks = 0;
            while (Store(log))
            {
                blocks++;
            }

            Expect(blocks > 5 && log.IsFull, "the card did not fill");
            log.EndSession(end);
            SessionHeader header = TruckPlan.Header(TruckPlan.Whole(), 20000);
            Expect(!log.BeginSession(header), "a session nobody fetched was given up");
            Tell(Open());
        }

        private void ConfirmAll()
        {
            RecordLog log = Open();
            for (int i = 0; i < log.Sessions.Count; i++)
            {
                LoggedSession session = log.Sessions[i];
                int length = log.Read(session, 0, bytes, 0, (int)session.Length);
                Expect(log.Confirm(session, Crc32C.Of(bytes, 0, length)), "a session could not be confirmed");
            }

            log = Open();
            Expect(log.Sessions.AllConfirmed(), "a confirmation is gone");
            Begin(log);
            ExpectNumber(1, log.Sessions.Count, "sessions of a log begun again");
            Expect(Store(log), "a block could not be stored again");
            Tell(Open());
        }

        private RecordLog Open()
        {
            RecordLog log = new RecordLog(card);
            log.Open();
            return log;
        }

        private void Begin(RecordLog log)
        {
            PlanRecord plan = TruckPlan.Whole();
            Expect(log.BeginSession(TruckPlan.Header(plan, 20000)) && log.Append(plan), "a session could not be begun");
        }

        private bool Store(RecordLog log)
        {
            block.Begin(20000);
            while (!block.IsFull)
            {
                now += 20000;
                sample.Microseconds = now;
                for (int channel = 0; channel < Channel.Count; channel++)
                {
                    sample.Values[channel] = 7000 + noise.Bell(40);
                }

                block.TryAdd(sample);
            }

            return log.Append(block);
        }

        private void Tell(RecordLog log)
        {
            Digest.AddNumber(log.FreeBytes);
            Digest.AddNumber(log.UnreadablePages);
            Digest.AddNumber(log.UnfinishedBytes);
            for (int i = 0; i < log.Sessions.Count; i++)
            {
                int length = log.Read(log.Sessions[i], 0, bytes, 0, bytes.Length);
                Digest.AddNumber(log.Sessions[i].Number);
                Digest.Add(bytes, 0, length);
                RecordScan scan = new RecordScan(bytes, 0, length);
                while (scan.MoveNext())
                {
                    Digest.Records++;
                }
            }
        }
    }
}
