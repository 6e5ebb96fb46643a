namespace LoggerBox.BoardParts.Card
{
    /// <summary>The log's file on the card, made once at its full length. Nothing here throws.</summary>
    public interface ICardFile
    {
        /// <summary>Length of the file, all of it written at least once; 0 where there is no card or no whole file.</summary>
        long Open();

        /// <summary>The last <see cref="Open"/> has made a part of the file and wants to be called again.</summary>
        bool IsBeingMade { get; }

        /// <summary>Returns how many bytes were read; fewer than asked for at the end, or where the card fails.</summary>
        int Read(long offset, byte[] buffer, int bufferOffset, int count);

        /// <summary>True when the bytes are on the card, not in a buffer.</summary>
        bool Write(long offset, byte[] buffer, int bufferOffset, int count);

        void Close();
    }
}
