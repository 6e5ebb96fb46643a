namespace LoggerBox.Protocol.Records
{
    /// <summary>A record whose body is longer than one sample set may wait for.</summary>
    public interface IPartedRecord : IRecord
    {
        /// <summary>What is left to write takes so little that it may all be written at once.</summary>
        bool IsNearlyWritten { get; }

        /// <summary>Parts that are left to write, about, where they are more than a few.</summary>
        int PartsLeft { get; }

        /// <summary>The body is to be written in parts. Nothing else may be done with the record until all are.</summary>
        void BeginWriting();

        /// <summary>Writes a part; true when that was the last.</summary>
        bool WritePart(ByteWriter writer);
    }
}
