namespace LoggerBox.Capture.Storage
{
    /// <summary>Where one session lies in the log.</summary>
    public sealed class LoggedSession
    {
        public uint Number;
        public ushort BootCount;

        /// <summary>Its first page and the last one that holds a whole record of it; no other session's page lies between them.</summary>
        public int StartPage;
        public int LastPage;

        /// <summary>Bytes from its header to the end of its last whole record, as the cable carries them.</summary>
        public uint Length;

        /// <summary>It was closed in order. One that was not was cut, or is being recorded.</summary>
        public bool Ended;

        /// <summary>The host has said that it stored all of it.</summary>
        public bool Confirmed;
    }
}
