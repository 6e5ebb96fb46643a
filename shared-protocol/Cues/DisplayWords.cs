namespace LoggerBox.Protocol.Cues
{
    /// <summary>What four seven-segment digits can say. Bits from 0: top, top right, bottom right, bottom, bottom left, top left, middle.</summary>
    public static class DisplayWords
    {
        public const int Places = 4;

        private const string Characters = "0123456789 AbCcdEFGHhIJLnoPrStUuY-_^=";

        private static readonly byte[] Segments =
        {
            0x3F, 0x06, 0x5B, 0x4F, 0x66, 0x6D, 0x7D, 0x07, 0x7F, 0x6F, 0x00,
            0x77, 0x7C, 0x39, 0x58, 0x5E, 0x79, 0x71, 0x3D, 0x76, 0x74, 0x06, 0x1E, 0x38, 0x54, 0x5C, 0x73, 0x50, 0x6D, 0x78, 0x3E, 0x1C, 0x6E,
            0x40, 0x08, 0x01, 0x48,
        };

        /// <summary>True for what a digit can show so that it is told from the others of its word.</summary>
        public static bool CanShow(char character) => Characters.IndexOf(character) >= 0;

        /// <summary>The segments of a character; dark for one that cannot be shown.</summary>
        public static byte Of(char character)
        {
            int index = Characters.IndexOf(character);
            return index < 0 ? (byte)0 : Segments[index];
        }

        /// <summary>The word with the number in the places of its ###, right-aligned; 999 where it is more.</summary>
        public static string WithNumber(string word, int number)
        {
            int places = word.IndexOf('#') < 0 ? 0 : word.Length - word.IndexOf('#');
            return places == 0 ? word : word.Substring(0, word.Length - places) + Number(number, places);
        }

        /// <summary>Right-aligned digits; nines where it does not fit, dashes for a negative one.</summary>
        public static string Number(int number, int places)
        {
            string text = "";
            int left = number;
            for (int i = 0; i < places; i++)
            {
                text = (number < 0 ? "-" : left == 0 && i > 0 ? " " : Digit(left % 10)) + text;
                left /= 10;
            }

            return left <= 0 ? text : "9999".Substring(0, places);
        }

        private static string Digit(int digit) => Characters.Substring(digit, 1);
    }
}
