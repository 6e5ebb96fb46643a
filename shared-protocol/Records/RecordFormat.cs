namespace LoggerBox.Protocol.Records
{
    /// <summary>The envelope of every record: header, body, CRC-32 over header and body.</summary>
    public static class RecordFormat
    {
        /// <summary>Raised when a reader of the old format would misread the new one; appended fields and new codes do not raise it.</summary>
        public const byte Version = 1;

        public const byte FirstMark = 0xD1;
        public const byte SecondMark = 0x4C;

        /// <summary>Mark 2, code 1, format version 1, body length 2, session number 4, boot count 2, sequence 4.</summary>
        public const int HeaderLength = 16;

        public const int CrcLength = 4;
        public const int EnvelopeLength = HeaderLength + CrcLength;

        /// <summary>Longest record, envelope included: what a reader must be able to hold.</summary>
        public const int MaxRecord = 2048;

        public const int MaxBody = MaxRecord - EnvelopeLength;

        /// <summary>Width of a text field, bytes of UTF-8.</summary>
        public const int TextWidth = 48;
    }
}
