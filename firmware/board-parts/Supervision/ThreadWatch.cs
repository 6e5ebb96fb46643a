namespace LoggerBox.BoardParts.Supervision
{
    /// <summary>
    /// Whether the program's threads still give signs of life. The platform has no watchdog, and a thread that throws ends without a word.
    /// </summary>
    public sealed class ThreadWatch
    {
        // Longer than the slowest card write and a stuck bus together.
        private const long SilentMicroseconds = 5000000;

        // A thread that ends so often is not cured by starting it.
        private const int MostRestarts = 3;
        private const long ForgetMicroseconds = 60000000;

        private readonly long[] _beats;
        private readonly int[] _restarts;
        private readonly long[] _restarted;

        public ThreadWatch(int threads)
        {
            _beats = new long[threads];
            _restarts = new int[threads];
            _restarted = new long[threads];
        }

        /// <summary>To be called by the thread itself, each time round.</summary>
        public void Beat(int thread, long now) => _beats[thread] = now;

        /// <summary>What is to be done about a thread.</summary>
        public ThreadVerdict Judge(int thread, bool isAlive, long now)
        {
            if (isAlive)
            {
                return now - _beats[thread] > SilentMicroseconds ? ThreadVerdict.BoardIsStuck : ThreadVerdict.Fine;
            }

            _restarts[thread] = now - _restarted[thread] > ForgetMicroseconds ? 1 : _restarts[thread] + 1;
            _restarted[thread] = now;
            _beats[thread] = now;
            return _restarts[thread] > MostRestarts ? ThreadVerdict.EndsTooOften : ThreadVerdict.StartAgain;
        }
    }

    public enum ThreadVerdict
    {
        Fine,
        StartAgain,
        EndsTooOften,
        BoardIsStuck,
    }
}
