using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Subjects;

namespace LoggerBox.Shop;

/// <summary>A job or session with its judgement.</summary>
/// <param name="Id">As in the page's address.</param>
/// <param name="Subject">With the job whose sheet and facts it was judged by, where there is one.</param>
internal sealed record JudgedSubject(string Id, Subject Subject, Judgement Judgement)
{
    public Job? Job => Subject.Job;
}
