// Signatures of nanoFramework.System.IO.FileSystem 1.1.93, compared with github.com/nanoframework/System.IO.FileSystem at 434b26c.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.1.93.0")]

namespace System.IO
{
    public static class File
    {
        public static void Delete(string path) => throw new NotImplementedException();

        public static bool Exists(string path) => throw new NotImplementedException();

        public static void Move(string sourceFileName, string destFileName) => throw new NotImplementedException();

        public static byte[] ReadAllBytes(string path) => throw new NotImplementedException();

        public static void WriteAllBytes(string path, byte[] bytes) => throw new NotImplementedException();
    }

    public static class Directory
    {
        public static bool Exists(string path) => throw new NotImplementedException();

        public static string[] GetFiles(string path) => throw new NotImplementedException();
    }

    public class FileStream : Stream
    {
        public FileStream(string path, FileMode mode, FileAccess access, FileShare share) => throw new NotImplementedException();

        public override long Length => throw new NotImplementedException();

        public override void Flush() => throw new NotImplementedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotImplementedException();

        public override void SetLength(long value) => throw new NotImplementedException();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotImplementedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotImplementedException();
    }

    public enum FileMode
    {
        CreateNew = 1,
        Create = 2,
        Open = 3,
        OpenOrCreate = 4,
        Truncate = 5,
        Append = 6,
    }

    [Flags]
    public enum FileAccess
    {
        Read = 1,
        Write = 2,
        ReadWrite = 3,
    }

    [Flags]
    public enum FileShare
    {
        None = 0,
        Read = 1,
        Write = 2,
        ReadWrite = 3,
    }
}

namespace nanoFramework.System.IO.FileSystem
{
    using global::System;

    public class SDCard : IDisposable
    {
        public SDCard(SDCardSpiParameters spiParameters, CardDetectParameters cdParameters = null) => throw new NotImplementedException();

        public bool IsMounted => throw new NotImplementedException();

        public void Mount() => throw new NotImplementedException();

        public void Unmount() => throw new NotImplementedException();

        public void Dispose() => throw new NotImplementedException();
    }

    public class SDCardSpiParameters
    {
        public uint slotIndex;
        public uint spiBus;
        public uint chipSelectPin;
    }

    public class CardDetectParameters
    {
        public bool enableCardDetectPin;
        public bool cardDetectedState;
        public uint cardDetectPin;
        public bool autoMount;
    }
}
