using LoggerBox.Protocol.Link;

namespace LoggerBox.Capture.Link
{
    /// <summary>
    /// Ranges that the host has asked for and that wait for their turn, so that the line never waits for the host. A request that
    /// waits already is not taken twice: the host may repeat each one.
    /// </summary>
    internal sealed class FetchQueue
    {
        /// <summary>A host keeps fewer on their way; see PROTOCOL.md, Fetch.</summary>
        public const int Capacity = 64;

        public int Count;

        private readonly Fetch[] waiting = new Fetch[Capacity];
        private int first;

        public FetchQueue()
        {
            for (int i = 0; i < Capacity; i++)
            {
                waiting[i] = new Fetch();
            }
        }

        /// <summary>False when there is no room.</summary>
        public bool TryAdd(Fetch request)
        {
            for (int i = 0; i < Count; i++)
            {
                if (waiting[(first + i) % Capacity].Tag == request.Tag)
                {
                    return true;
                }
            }

            if (Count == Capacity)
            {
                return false;
            }

            Fetch place = waiting[(first + Count) % Capacity];
            place.SessionNumber = request.SessionNumber;
            place.Offset = request.Offset;
            place.Length = request.Length;
            place.PayloadLength = request.PayloadLength;
            place.Tag = request.Tag;
            place.EndWanted = request.EndWanted;
            Count++;
            return true;
        }

        /// <summary>The one that waits longest; valid until the next is added. Not to be called when none waits.</summary>
        public Fetch Take()
        {
            Fetch next = waiting[first];
            first = (first + 1) % Capacity;
            Count--;
            return next;
        }

        public void Clear()
        {
            Count = 0;
        }
    }
}
