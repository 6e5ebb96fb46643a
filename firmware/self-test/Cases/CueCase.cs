using LoggerBox.Protocol.Cues;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Every cue as it is seen and heard, each place of the display in segments.</summary>
    internal sealed class CueCase : SelfTestCase
    {
        private const int Number = 37;

        public CueCase()
            : base("cues")
        {
        }

        public override void Execute()
        {
            for (int i = 0; i < CueTable.All.Length; i++)
            {
                CueSignal signal = CueTable.All[i];
                Expect(CueTable.Find(signal.Cue) == signal, "another cue was found");
                Digest.AddText(signal.Sounder);
                Digest.AddText(signal.Lamp);
                Digest.AddNumber(signal.Rank);
                string word = DisplayWords.WithNumber(signal.Display, Number);
                Digest.AddText(word);
                for (int place = 0; place < word.Length; place++)
                {
                    Expect(DisplayWords.CanShow(word[place]), "a digit cannot show it");
                    Digest.AddNumber(DisplayWords.Of(word[place]));
                }
            }
        }
    }
}
