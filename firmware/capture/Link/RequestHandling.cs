using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Link
{
    /// <summary>What each request does and what is said to it. All messages are made once and filled again.</summary>
    internal sealed class RequestHandling
    {
        private readonly LinkAnswers link;
        private readonly RecordLog log;
        private readonly uint loggerId;
        private readonly ushort bootCount;
        private readonly SessionSending sending;
        private readonly SessionCheck check;
        private readonly Hello hello = new Hello();
        private readonly List list = new List();
        private readonly Fetch fetch = new Fetch();
        private readonly Confirm confirm = new Confirm();
        private readonly SetClock setClock = new SetClock();
        private readonly Watch watch = new Watch();
        private readonly SendCalibration calibration = new SendCalibration();
        private readonly GetCalibration getCalibration = new GetCalibration();
        private readonly LiveStream live = new LiveStream();
        private readonly PlanRecord plan = new PlanRecord();
        private readonly HelloAnswer helloAnswer = new HelloAnswer();
        private readonly SessionList sessionList = new SessionList();
        private readonly PlanAnswer planAnswer = new PlanAnswer();
        private readonly ClockAnswer clockAnswer = new ClockAnswer();
        private readonly Refusal refusal = new Refusal();

        public RequestHandling(LinkAnswers link, RecordLog log, uint loggerId, ushort bootCount)
        {
            this.link = link;
            this.log = log;
            this.loggerId = loggerId;
            this.bootCount = bootCount;
            sending = new SessionSending(log);
            check = new SessionCheck(log);
        }

        /// <summary>A range is on its way, or a session is being compared.</summary>
        public bool IsActive => sending.IsActive || check.IsActive;

        /// <summary>The next frame of what takes more than one step; null when there is none yet.</summary>
        public IMessage? Continue(long microseconds) => live.IsDue(microseconds) ? link.Live
            : sending.IsActive ? sending.Next()
            : check.IsActive ? check.Next()
            : null;

        /// <summary>Does what a frame asks. Null where the answer comes by <see cref="Continue"/>.</summary>
        public IMessage? Answer(ByteReader content, long microseconds, uint utcSeconds)
        {
            MessageCode code = (MessageCode)content.ReadByte();
            switch (code)
            {
                case MessageCode.Hello:
                    return !hello.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : AnswerHello(microseconds, utcSeconds);
                case MessageCode.List:
                    return !list.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : AnswerList();
                case MessageCode.Fetch:
                    return !fetch.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : BeginFetch();
                case MessageCode.Confirm:
                    return !confirm.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : BeginCheck();
                case MessageCode.SendPlan:
                    return TakePlan(content);
                case MessageCode.SetClock:
                    return !setClock.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : TakeClock();
                case MessageCode.Watch:
                    return !watch.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : BeginWatch(microseconds);
                case MessageCode.SendCalibration:
                    return !calibration.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : TakeCalibration();
                case MessageCode.GetCalibration:
                    return !getCalibration.TryRead(content) ? Refuse(code, RefusalReason.Malformed) : TellCalibration(code, getCalibration.Channel);
                default:
                    // Its own words, from a line that echoes: answered, they would come back for ever.
                    return code >= MessageCode.HelloAnswer ? null : Refuse(code, RefusalReason.UnknownRequest);
            }
        }

        private HelloAnswer AnswerHello(long microseconds, uint utcSeconds)
        {
            // A host that greets begins anew: what the last one asked for is not sent to it.
            sending.Stop();
            live.Stop();
            link.Greetings++;

            // A host of another version is told which one this is; it decides whether it can go on.
            helloAnswer.Version = LinkVersion.Current;
            helloAnswer.RecordVersion = RecordFormat.Version;
            helloAnswer.LoggerId = loggerId;
            helloAnswer.BootCount = bootCount;
            helloAnswer.Microseconds = microseconds;
            helloAnswer.UtcSeconds = utcSeconds;
            helloAnswer.FreeBytes = log.FreeBytes;
            helloAnswer.CapacityBytes = log.CapacityBytes;
            helloAnswer.SessionCount = (ushort)log.Sessions.Count;
            helloAnswer.Recording = log.IsRecording;
            return helloAnswer;
        }

        private SessionList AnswerList()
        {
            int left = log.Sessions.Count - list.FirstIndex;
            sessionList.Total = (ushort)log.Sessions.Count;
            sessionList.FirstIndex = list.FirstIndex;
            sessionList.Count = left < 0 ? 0 : left > SessionList.MaxEntries ? SessionList.MaxEntries : left;
            for (int i = 0; i < sessionList.Count; i++)
            {
                int index = list.FirstIndex + i;
                LoggedSession session = log.Sessions[index];
                SessionEntry entry = sessionList.Entries[i];
                entry.Number = session.Number;
                entry.BootCount = session.BootCount;
                entry.Length = session.Length;
                entry.Ended = session.Ended;
                entry.Confirmed = session.Confirmed;
                entry.Recording = log.IsRecording && index == log.Sessions.Count - 1;
            }

            return sessionList;
        }

        private Refusal? BeginFetch()
        {
            if (log.Sessions.Find(fetch.SessionNumber) == null)
            {
                return Refuse(MessageCode.Fetch, RefusalReason.NoSuchSession);
            }

            check.IsActive = false;
            return sending.TryAdd(fetch) ? null : Refuse(MessageCode.Fetch, RefusalReason.TooManyRequests);
        }

        private Refusal? BeginCheck()
        {
            LoggedSession? session = log.Sessions.Find(confirm.SessionNumber);
            if (session == null)
            {
                return Refuse(MessageCode.Confirm, RefusalReason.NoSuchSession);
            }

            if (log.IsRecording)
            {
                return Refuse(MessageCode.Confirm, RefusalReason.Recording);
            }

            sending.Stop();
            check.Begin(session, confirm);
            return null;
        }

        private IMessage TakePlan(ByteReader content)
        {
            int start = content.Position;
            if (!plan.TryRead(content))
            {
                return Refuse(MessageCode.SendPlan, RefusalReason.Malformed);
            }

            switch (PlanBounds.Check(plan))
            {
                case PlanFault.Speeds:
                    return Refuse(MessageCode.SendPlan, RefusalReason.PlanSpeeds);
                case PlanFault.StallTimes:
                    return Refuse(MessageCode.SendPlan, RefusalReason.PlanStallTimes);
                case PlanFault.Pressures:
                    return Refuse(MessageCode.SendPlan, RefusalReason.PlanPressures);
                case PlanFault.Pickup:
                    return Refuse(MessageCode.SendPlan, RefusalReason.PlanPickup);
                default:
                    break;
            }

            // Read a second time, now that it is known to be sound: the plan in use is never half a new one.
            content.Position = start;
            link.Plan.TryRead(content);
            link.PlanArrived = true;
            return planAnswer;
        }

        private ClockAnswer TakeClock()
        {
            link.UtcSeconds = setClock.UtcSeconds;
            link.ClockArrived = true;
            return clockAnswer;
        }

        private LiveReadings BeginWatch(long microseconds)
        {
            live.Begin(watch, microseconds);
            return link.Live;
        }

        private IMessage TakeCalibration()
        {
            CalibrationAnswer? held = link.Calibrations.Find(calibration.Channel);
            if (held != null)
            {
                held.CopyFrom(calibration);
                link.Calibrations.Arrived = true;
            }

            return TellCalibration(MessageCode.SendCalibration, calibration.Channel);
        }

        private IMessage TellCalibration(MessageCode request, int channel)
        {
            CalibrationAnswer? held = link.Calibrations.Find(channel);
            return held == null ? (IMessage)Refuse(request, RefusalReason.Malformed) : held;
        }

        private Refusal Refuse(MessageCode request, RefusalReason reason)
        {
            refusal.Request = request;
            refusal.Reason = reason;
            return refusal;
        }
    }
}
