using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Plans
{
    /// <summary>A plan as a file on the card: one record with its envelope, CRC included.</summary>
    public static class PlanFile
    {
        public const string Ending = ".plan";

        /// <summary>False where the bytes are no whole plan record, or one outside its bounds.</summary>
        public static bool TryRead(byte[] bytes, int count, PlanRecord plan)
        {
            RecordReader reader = new RecordReader(bytes);
            Envelope envelope = new Envelope();
            return reader.TryReadEnvelope(0, count, envelope) == EnvelopeResult.Complete
                && envelope.Code == RecordCode.Plan
                && reader.TryReadBody(envelope, plan)
                && PlanBounds.Check(plan) == PlanFault.None;
        }
    }
}
