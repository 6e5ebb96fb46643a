namespace LoggerBox.Protocol.Link
{
    /// <summary>Why a request is not done; the numbers are on the wire.</summary>
    public enum RefusalReason : byte
    {
        /// <summary>The code is none of this version.</summary>
        UnknownRequest = 1,

        /// <summary>The message is too short, or a field cannot be.</summary>
        Malformed = 2,

        /// <summary>The logger has no session of this number.</summary>
        NoSuchSession = 3,

        /// <summary>Length or CRC differ from what the logger holds: fetch the session again.</summary>
        DoesNotAgree = 4,

        /// <summary>Not while a session is being recorded.</summary>
        Recording = 5,

        /// <summary>The store could not keep the note.</summary>
        StoreFailed = 6,

        /// <summary>More ranges wait than the logger keeps: ask again when some have come.</summary>
        TooManyRequests = 7,

        /// <summary>A plan outside sane bounds: a speed, a time of the stall clock, a pressure, or the pulses per revolution.</summary>
        PlanSpeeds = 8,
        PlanStallTimes = 9,
        PlanPressures = 10,
        PlanPickup = 11,
    }
}
