using LoggerBox.Capture.Board;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Session
{
    /// <summary>Gives a cue to the seat, to a host that watches, and to the record.</summary>
    public sealed class CueGiver
    {
        private readonly IBoard _board;
        private readonly Tags _tags;
        private readonly LiveReadings _live;

        public CueGiver(IBoard board, Tags tags, LiveReadings live)
        {
            _board = board;
            _tags = tags;
            _live = live;
        }

        /// <summary>None gives nothing.</summary>
        public void Give(Cue cue, long now)
        {
            if (cue != Cue.None)
            {
                _board.Show(cue);
                _live.Cue = cue;
                _live.CueMicroseconds = now;
                _tags.Write(now, EventKind.Cue, (int)cue);
            }
        }
    }
}
