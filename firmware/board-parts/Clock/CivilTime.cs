namespace LoggerBox.BoardParts.Clock
{
    /// <summary>Seconds since 1970 UTC and a calendar's date, for the years of the clock chip: 2000 to 2099.</summary>
    public sealed class CivilTime
    {
        public int Year;
        public int Month;
        public int Day;
        public int Hour;
        public int Minute;
        public int Second;

        private const uint DaySeconds = 86400;

        // 1 January 2000.
        private const uint FirstSeconds = 946684800;

        public bool IsPossible =>
            Year >= 2000 && Year <= 2099 && Month >= 1 && Month <= 12 && Day >= 1 && Day <= DaysOf(Year, Month)
            && Hour >= 0 && Hour <= 23 && Minute >= 0 && Minute <= 59 && Second >= 0 && Second <= 59;

        /// <summary>Of a possible time.</summary>
        public uint ToUtcSeconds()
        {
            int days = 0;
            for (int year = 2000; year < Year; year++)
            {
                days += IsLeap(year) ? 366 : 365;
            }

            for (int month = 1; month < Month; month++)
            {
                days += DaysOf(Year, month);
            }

            days += Day - 1;
            return FirstSeconds + ((uint)days * DaySeconds) + (uint)((Hour * 3600) + (Minute * 60) + Second);
        }

        /// <summary>False before 2000.</summary>
        public bool TrySet(uint utcSeconds)
        {
            if (utcSeconds < FirstSeconds)
            {
                return false;
            }

            uint left = (utcSeconds - FirstSeconds) % DaySeconds;
            int days = (int)((utcSeconds - FirstSeconds) / DaySeconds);
            Hour = (int)(left / 3600);
            Minute = (int)(left / 60 % 60);
            Second = (int)(left % 60);
            Year = 2000;
            while (days >= (IsLeap(Year) ? 366 : 365))
            {
                days -= IsLeap(Year) ? 366 : 365;
                Year++;
            }

            Month = 1;
            while (days >= DaysOf(Year, Month))
            {
                days -= DaysOf(Year, Month);
                Month++;
            }

            Day = days + 1;
            return true;
        }

        // From 2000 to 2099 every fourth year is a leap year.
        private static bool IsLeap(int year) => year % 4 == 0;

        private static int DaysOf(int year, int month) =>
            month == 2 ? (IsLeap(year) ? 29 : 28)
            : month == 4 || month == 6 || month == 9 || month == 11 ? 30
            : 31;
    }
}
