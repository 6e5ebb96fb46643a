using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Finds where in a hold the last channel has settled: the part is shortened from the front until its head agrees with its end. A question at a
    /// time, so that no sample set waits for it.
    /// </summary>
    public sealed class SettledPart
    {
        /// <summary>Shorter than this nothing is called settled.</summary>
        public const int FewestBins = 12;

        // A drift of one standard deviation a second is told from a stand in three seconds, not in less.
        private const int SureBins = 30;
        private const int Candidates = 24;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;
        private readonly Agreement _agreement;
        private readonly SteadyDrift _drift;
        private Question _question;
        private int _from;
        private int _until;
        private int _step;
        private int _tried;
        private int _found;
        private int _least;
        private int _unsettled;
        private int _channel;
        private bool _agrees;
        private bool _sure;

        public SettledPart(BinSpan span, Tolerances tolerances, Agreement agreement)
        {
            _span = span;
            _tolerances = tolerances;
            _agreement = agreement;
            _drift = new SteadyDrift(span, tolerances);
        }

        private enum Question : byte
        {
            WhatNoise,
            FromWhere,
            FromWhereExactly,
            UntilWhere,
            UntilThere,
            FromWhereCoarsely,
            IsDrift,
            Answered,
        }

        /// <summary>After the last <see cref="Advance"/>: there is a settled part, its first bin and the one after its last.</summary>
        public bool IsThere { get; private set; }

        public int Begin { get; private set; }

        public int End { get; private set; }

        /// <summary>Channels that drift in it, a bit each: less than a foot does, or a pressure while the speed stands.</summary>
        public int Drifting { get; private set; }

        /// <summary>
        /// The settled part of a hold is to be looked for. Where no three seconds agree as closely as their noise lets one see, a foot or an idle
        /// wanders: then what matters on a truck is asked for. There is none where an engine recovers from a lifted pedal (half as much again as
        /// what matters), and a straight drift is none.
        /// </summary>
        public void Seek(int from, int end)
        {
            _from = from;
            _until = end;
            _sure = false;
            IsThere = false;
            Drifting = 0;
            _question = Question.WhatNoise;
            _agreement.BeginLearning(from, end);
        }

        /// <summary>Asks the next question; true once all are answered.</summary>
        public bool Advance()
        {
            switch (_question)
            {
                case Question.WhatNoise:
                    Learn();
                    break;
                case Question.FromWhere:
                    TryFrom();
                    break;
                case Question.FromWhereExactly:
                    TryExactlyFrom();
                    break;
                case Question.UntilWhere:
                    TryUntil(true);
                    break;
                case Question.UntilThere:
                    TryUntil(false);
                    break;
                case Question.FromWhereCoarsely:
                    TryCoarselyFrom();
                    break;
                case Question.IsDrift:
                    TellDrift();
                    break;
                default:
                    break;
            }

            return _question == Question.Answered;
        }

        private void Learn()
        {
            if (_agreement.Learn())
            {
                _step = Step(_from, _until - FewestBins);
                _tried = _from;
                _question = Question.FromWhere;
            }
        }

        // First bin from which all agrees finely to the end; the end where none does.
        private void TryFrom()
        {
            if (_tried > _until - FewestBins)
            {
                TakeFrom(_until);
            }
            else if (!IsAnswered(_tried, _until, false))
            {
                return;
            }
            else if (_agrees)
            {
                _found = _tried;
                _tried = IntegerMath.Max(_from, _found - _step + 1);
                _question = Question.FromWhereExactly;
            }
            else
            {
                _tried += _step;
            }
        }

        // Between two candidates bin by bin: what settles in half a second is settled after half a second.
        private void TryExactlyFrom()
        {
            if (_tried >= _found)
            {
                TakeFrom(_tried);
            }
            else if (IsAnswered(_tried, _until, false))
            {
                _found = _agrees ? _tried : _found;
                _tried += _agrees ? 0 : 1;
            }
        }

        private void TakeFrom(int begin)
        {
            Begin = begin;
            End = _until;
            _sure = End - Begin >= SureBins;
            if (_sure && (End - Begin) * 2 >= _until - _from)
            {
                Judge();
                return;
            }

            _step = Step(_from + SureBins, _until);
            _tried = _until;
            _question = Question.UntilWhere;
        }

        // A hold may go slowly over into another level: the bin up to which all agrees finely from the beginning.
        private void TryUntil(bool atEnd)
        {
            if (_tried < _from + SureBins)
            {
                GoOnCoarsely();
            }
            else if (!IsAnswered(_from, _tried, atEnd))
            {
                return;
            }
            else if (!_agrees)
            {
                _tried -= _step;
                _question = Question.UntilWhere;
            }
            else if (atEnd)
            {
                _question = Question.UntilThere;
            }
            else
            {
                TakeUntil();
            }
        }

        private void TakeUntil()
        {
            if (_tried - _from > End - Begin)
            {
                Begin = _from;
                End = _tried;
                _sure = true;
            }

            GoOnCoarsely();
        }

        private void GoOnCoarsely()
        {
            if (_sure)
            {
                Judge();
                return;
            }

            _step = Step(_from, _until - FewestBins);
            _tried = _found = _from;
            _least = int.MaxValue;
            _question = Question.FromWhereCoarsely;
        }

        private void TryCoarselyFrom()
        {
            if (_tried <= _until - FewestBins && _least > Agreement.Agrees)
            {
                TryCoarsely();
                return;
            }

            Begin = _found;
            Judge();
        }

        // A channel at a time; the first that does not agree answers.
        private bool IsAnswered(int begin, int end, bool atEnd)
        {
            _agrees = _agreement.AgreesFinely(_channel, begin, end, atEnd);
            _channel = _agrees && _channel < Channel.Count - 1 ? _channel + 1 : 0;
            return _channel == 0;
        }

        // A channel at a time, as long as the part can still be better than the best so far.
        private void TryCoarsely()
        {
            _unsettled = IntegerMath.Max(_channel == 0 ? 0 : _unsettled, _agreement.CoarsePerMille(_channel, _tried, _until));
            bool isWorse = _unsettled >= _least;
            _channel++;
            if (!isWorse && _channel < Channel.Count)
            {
                return;
            }

            _least = isWorse ? _least : _unsettled;
            _found = isWorse ? _found : _tried;
            _tried += _step;
            _channel = 0;
        }

        private void Judge()
        {
            long level = _span.Mean(Channel.Speed, Begin, End);
            IsThere = _agreement.CoarsePerMille(Channel.Speed, Begin, End) <= 1500
                && _span.Deviation(Channel.Speed, Begin, End) <= _tolerances.Scatter(Channel.Speed, level);
            _question = _sure || !IsThere ? Question.Answered : Question.IsDrift;
            if (_question == Question.IsDrift)
            {
                _drift.Begin(_from, _until);
            }
        }

        private void TellDrift()
        {
            if (_drift.Advance())
            {
                IsThere = !_drift.Is;
                Drifting = _drift.Channels;
                _question = Question.Answered;
            }
        }

        private static int Step(int from, int last) => IntegerMath.Max(1, (last - from) / Candidates);
    }
}
