using System;
using System.IO;
using LoggerBox.BoardParts.Settings;

namespace LoggerBox.BoardEsp32
{
    /// <summary>A small file in internal flash, written and closed in one go: only closing makes it safe from a cut there.</summary>
    internal sealed class FlashCopy : IFlashCopy
    {
        private readonly string _path;

        public FlashCopy(string name)
        {
            _path = "I:\\" + name;
        }

        public int Read(byte[] buffer)
        {
            try
            {
                if (!File.Exists(_path))
                {
                    return 0;
                }

                byte[] bytes = File.ReadAllBytes(_path);
                int count = bytes.Length < buffer.Length ? bytes.Length : buffer.Length;
                Array.Copy(bytes, 0, buffer, 0, count);
                return count;
            }
            catch (Exception)
            {
                return 0;
            }
        }

        public bool Write(byte[] buffer, int count)
        {
            try
            {
                byte[] bytes = new byte[count];
                Array.Copy(buffer, 0, bytes, 0, count);
                File.WriteAllBytes(_path, bytes);
                return true;
            }
            catch (Exception)
            {
                return false;
            }
        }
    }
}
