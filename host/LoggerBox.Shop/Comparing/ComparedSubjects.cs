using LoggerBox.Host.Archive;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;

namespace LoggerBox.Shop.Comparing;

/// <summary>Two subjects of one truck, in one unit.</summary>
internal sealed record ComparedSubjects(JudgedSubject Before, JudgedSubject After, Comparison Comparison)
{
    /// <exception cref="Host.UserErrorException">They are of two trucks, or one of them cannot be had.</exception>
    public static ComparedSubjects Of(ArchiveFile file, string before, string after, JudgedSubjects subjects, PressureUnit? unit)
    {
        JudgedSubject first = subjects.Find(file, before, unit);
        JudgedSubject second = subjects.Find(file, after, first.Judgement.Unit);
        SameTruck.Demand(first.Subject, second.Subject);
        return new ComparedSubjects(first, second, Comparison.Of(first.Judgement, second.Judgement));
    }
}
