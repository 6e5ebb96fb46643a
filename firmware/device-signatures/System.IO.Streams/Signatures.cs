// Signatures of nanoFramework.System.IO.Streams 1.1.96, compared with github.com/nanoframework/System.IO.Streams at ff384f9.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.1.96.0")]

namespace System.IO
{
    public abstract class Stream : MarshalByRefObject, IDisposable
    {
        public abstract long Length { get; }

        public abstract void Flush();

        public abstract long Seek(long offset, SeekOrigin origin);

        public abstract void SetLength(long value);

        public abstract int Read(byte[] buffer, int offset, int count);

        public abstract void Write(byte[] buffer, int offset, int count);

        public void Dispose() => throw new NotImplementedException();
    }

    public enum SeekOrigin
    {
        Begin = 0,
        Current = 1,
        End = 2,
    }
}
