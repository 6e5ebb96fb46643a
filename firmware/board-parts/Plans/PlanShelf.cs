using LoggerBox.BoardParts.Settings;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Plans
{
    /// <summary>
    /// The plans that the logger holds, numbered from 1; number 0 is no plan: cautious guards, and no limits. A plan of the same name
    /// replaces the older one.
    /// </summary>
    public sealed class PlanShelf
    {
        public const int Capacity = 24;

        private readonly PlanRecord[] _plans = new PlanRecord[Capacity];
        private readonly PlanRecord _none = new PlanRecord();
        private readonly TwoCopies _copies;

        public PlanShelf(TwoCopies copies)
        {
            _copies = copies;
            for (int i = 0; i < Capacity; i++)
            {
                _plans[i] = new PlanRecord();
            }
        }

        public int Count { get; private set; }

        /// <summary>The plan of that number; without limits where there is none.</summary>
        public PlanRecord this[int number] => number < 1 || number > Count ? _none : _plans[number - 1];

        /// <summary>For a session: what the shelf takes later changes nothing of it.</summary>
        public PlanRecord CopyOf(int number)
        {
            PlanRecord copy = new PlanRecord();
            Copy(this[number], copy);
            return copy;
        }

        /// <summary>Takes what flash holds. False where there is nothing or nothing good; a plan outside its bounds is left out.</summary>
        public bool Load()
        {
            Count = 0;
            ByteReader? reader = _copies.Load();
            if (reader == null)
            {
                return false;
            }

            int stored = reader.ReadByte();
            for (int i = 0; i < stored && Count < Capacity; i++)
            {
                bool sound = _plans[Count].TryRead(reader) && PlanBounds.Check(_plans[Count]) == PlanFault.None;
                Count += sound ? 1 : 0;
            }

            return !reader.TooShort;
        }

        /// <summary>
        /// Takes a plan and stores the shelf. Returns its number, or 0 where it is outside its bounds, the shelf is full, or flash
        /// did not take it.
        /// </summary>
        public int Put(PlanRecord plan)
        {
            int index = IndexOf(plan.Name);
            if (PlanBounds.Check(plan) != PlanFault.None || index == Capacity)
            {
                return 0;
            }

            if (index < Count && IsSame(plan, _plans[index]))
            {
                return index + 1;
            }

            Copy(plan, _plans[index]);
            Count = index == Count ? Count + 1 : Count;
            return Save() ? index + 1 : 0;
        }

        private int IndexOf(string name)
        {
            int index = 0;
            while (index < Count && _plans[index].Name != name)
            {
                index++;
            }

            return index;
        }

        private bool Save()
        {
            ByteWriter writer = _copies.Begin();
            writer.WriteByte((byte)Count);
            for (int i = 0; i < Count; i++)
            {
                _plans[i].Write(writer);
            }

            return _copies.Save();
        }

        // Flash is not written for what it holds already: plans on the card are offered at every start.
        private static bool IsSame(PlanRecord one, PlanRecord other)
        {
            byte[] bytes = new byte[RecordFormat.MaxRecord];
            ByteWriter writer = new ByteWriter(bytes);
            one.Write(writer);
            int length = writer.Position;
            other.Write(writer);
            for (int i = 0; i < length; i++)
            {
                if (bytes[i] != bytes[length + i])
                {
                    return false;
                }
            }

            return true;
        }

        // By way of its bytes: a plan that the link fills again later must not change one that is kept.
        private static void Copy(PlanRecord from, PlanRecord to)
        {
            byte[] bytes = new byte[RecordFormat.MaxRecord];
            ByteWriter writer = new ByteWriter(bytes);
            from.Write(writer);
            ByteReader reader = new ByteReader(bytes);
            reader.Restart(0, writer.Position);
            to.TryRead(reader);
        }
    }
}
