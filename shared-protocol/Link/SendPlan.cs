using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: work by this plan. The message is the plan record's body.</summary>
    public sealed class SendPlan : IMessage
    {
        public readonly PlanRecord Plan;

        public SendPlan(PlanRecord plan)
        {
            Plan = plan;
        }

        public MessageCode Code => MessageCode.SendPlan;

        public void Write(ByteWriter writer) => Plan.Write(writer);

        public bool TryRead(ByteReader reader) => Plan.TryRead(reader);
    }
}
