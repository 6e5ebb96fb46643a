using System;
using System.IO;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>Job files that were cut, damaged, or made by somebody who means no good: a sentence, and nothing written.</summary>
public sealed class HostileJobFileTests : IDisposable
{
    private const byte JobCode = 1;
    private const byte SheetCode = 2;
    private const byte SessionCode = 3;
    private const byte CorrectionCode = 4;
    private const byte GateCode = 128;
    private const byte CalibrationCode = 129;

    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly TemporaryFolder folder = new();
    private readonly byte[] sound;

    public HostileJobFileTests()
    {
        using ArchiveFile archive = ArchiveFile.Open(folder.File("first.sqlite"));
        archive.Sessions.Add(RecordedBytes.Session(7, seed: 1, sampleSets: 20).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        archive.Jobs.Create(new JobDetails(Truck: "Sample truck", Complaint: "Weak", SheetName: "sample.toml", SheetText: "[truck]\n"), Now);
        archive.Jobs.AddSessions("J1", ["S1"], Now);
        archive.Corrections.DateSession("S1", Now, "A. Fitter", "clock was empty", Now);
        archive.Gates.Tick("J1", ["chocks"], "B. Smith", "dry", Now.AddSeconds(7));
        archive.Calibrations.Add(
        [
            new ArchivedCalibration(RecordedBytes.LoggerId, 2, 3196, 12801, 3_447_379, 8600, "TX-5", "DW-1", "C-77", new DateOnly(2026, 1, 10), null, new DateOnly(2027, 1, 11), "A", "1 2", Now),
        ]);
        using MemoryStream file = new();
        JobFileWriter.Write(archive, "J1", file);
        sound = file.ToArray();
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Cut_at_any_byte_it_is_refused()
    {
        for (int length = 0; length < sound.Length; length++)
        {
            Assert.Contains(length == 0 ? "no job file" : "cut or damaged", Refusal(sound[..length]), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void With_one_damaged_byte_anywhere_it_is_refused()
    {
        var chance = new Random(20260302);
        for (int at = 0; at < sound.Length; at++)
        {
            byte[] damaged = [.. sound];
            damaged[at] ^= (byte)chance.Next(1, 256);
            Refusal(damaged);
        }
    }

    [Fact]
    public void With_something_after_its_end_it_is_refused() => Refusal([.. sound, .. sound]);

    [Theory]
    [InlineData(JobCode, uint.MaxValue)]
    [InlineData(SheetCode, uint.MaxValue)]
    [InlineData(SessionCode, uint.MaxValue)]
    [InlineData(SessionCode, 1u << 31)]
    [InlineData(CorrectionCode, 0x7FFFFFFFu)]
    [InlineData((byte)255, uint.MaxValue)]
    [InlineData((byte)255, 3u)]
    public void A_section_that_claims_more_than_there_is_is_refused(byte section, uint claim) =>
        Assert.Contains("not in order", Refusal(new JobFileText(sound).ToBytes(code => code == section ? claim : 0)), StringComparison.Ordinal);

    [Theory]
    [InlineData(JobCode, "Sample truck", "Sample\0truck", "NUL")]
    [InlineData(JobCode, "J1", "J1\0", "NUL")]
    [InlineData(SheetCode, "sample.toml", "../../sample.toml", "no file name")]
    [InlineData(SheetCode, "sample.toml", "C:\\sample.toml", "no file name")]
    [InlineData(SessionCode, "S1", "../S1", "no id")]
    [InlineData(SessionCode, "7", "4294967296", "\"number\" is no whole number")]
    [InlineData(SessionCode, "fetched", "stolen", "origin")]
    [InlineData(SessionCode, "1772443800", "99999999999999999999", "stored_utc")]
    [InlineData(SessionCode, "0", "100000", "stored_offset_min")]
    [InlineData(CorrectionCode, "S1", "S2", "a correction is of nothing")]
    [InlineData(GateCode, "chocks", "CHOCKS", "no code")]
    [InlineData(GateCode, "chocks", "", "no code")]
    [InlineData(GateCode, "B. Smith", " ", "nobody answers")]
    [InlineData(GateCode, "B. Smith", "B.\u0007Smith", "nobody answers")]
    [InlineData(GateCode, "dry", "\e[31mdry", "no note")]
    [InlineData(GateCode, "0", "2", "\"withdrawn\" is no whole number")]
    [InlineData(CalibrationCode, "2", "4", "\"channel\" is no whole number")]
    [InlineData(CalibrationCode, "12801", "0", "no span")]
    [InlineData(CalibrationCode, "3447379", "3447379000", "span_pa")]
    [InlineData(CalibrationCode, "2027-01-11", "2027-13-01", "2027-13-01")]
    [InlineData(CalibrationCode, "2027-01-11", "\e[2J", "\" [2J\" is no day")]
    [InlineData(GateCode, "1772443807", "-1", "made_utc")]
    [InlineData(CorrectionCode, "1772443800", "9223372036854775807", "\"value\" is no whole number")]
    public void A_value_that_no_archive_wrote_is_refused(byte section, string old, string fresh, string reason)
    {
        JobFileText file = new(sound);
        file.Replace(section, old, fresh);
        Assert.Contains(reason, Refusal(file.ToBytes()), StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_claims_more_than_there_is_is_refused()
    {
        JobFileText file = new(sound);
        byte[] job = [.. file.Sections[0].Content];
        job.AsSpan(3, 4).Fill(0xFF);
        file.Sections[0] = (JobCode, job);
        Assert.Contains("claims 4294967295 bytes of text", Refusal(file.ToBytes()), StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_or_a_story_longer_than_any_work_order_is_refused()
    {
        Assert.Contains("truck's name has 201 signs", Changed(file => file.Replace(JobCode, "Sample truck", new string('x', 201))), StringComparison.Ordinal);
        Assert.Contains("complaint has 2001 signs", Changed(file => file.Replace(JobCode, "Weak", new string('x', 2001))), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_jobs_or_none_and_a_session_without_bytes_or_twice_are_refused()
    {
        Assert.Contains("two jobs", Changed(file => file.Sections.Add(file.Sections[0])), StringComparison.Ordinal);
        Assert.Contains("no job", Changed(file => file.Sections.RemoveAt(0)), StringComparison.Ordinal);
        Assert.Contains("twice", Changed(file => file.Sections.Add(file.Sections[file.IndexOf(SessionCode)])), StringComparison.Ordinal);
        Assert.Contains("claims 0 bytes", Changed(file =>
        {
            int index = file.IndexOf(SessionCode);
            byte[] content = file.Sections[index].Content;
            int fields = content.Length - RecordedBytes.Session(7, seed: 1, sampleSets: 20).ToArray().Length;
            file.Sections[index] = (SessionCode, content[..fields]);
        }), StringComparison.Ordinal);
        Assert.Contains("not what its check says", Changed(file => file.Sections[file.IndexOf(SessionCode)].Content[^1]++), StringComparison.Ordinal);
    }

    [Fact]
    public void Text_without_end_is_not_kept_in_memory() => Assert.Contains("more text than any job", Changed(file =>
    {
        byte[] million = new byte[1 << 20];
        for (int i = 0; i < 20; i++)
        {
            file.Sections.Add((CorrectionCode, [.. file.Sections[file.IndexOf(CorrectionCode)].Content, .. million]));
        }
    }), StringComparison.Ordinal);

    [Fact]
    public void What_a_later_program_wrote_is_skipped_or_refused_as_it_says()
    {
        Assert.Contains("section 9", Changed(file => file.Sections.Add((9, [1, 2, 3]))), StringComparison.Ordinal);
        Assert.Contains("version 2, this program reads version 1", Changed(file => file.Header[8]++), StringComparison.Ordinal);
        JobFileText file = new(sound);
        file.Sections.Insert(0, (200, [1, 2, 3]));
        Assert.Equal("J1", Import(file.ToBytes(), () => ArchiveFile.Open(folder.File("second.sqlite"))).Id);
    }

    [Fact]
    public void A_job_number_beyond_all_others_is_not_kept()
    {
        JobFileText file = new(sound);
        file.Replace(JobCode, "J1", "J9223372036854775807");
        Assert.Equal("J1", Import(file.ToBytes(), () => ArchiveFile.Open(folder.File("second.sqlite"))).Id);
        using ArchiveFile archive = ArchiveFile.Open(folder.File("second.sqlite"));
        Assert.Equal("J2", archive.Jobs.Create(new JobDetails(), Now));
    }

    private string Changed(Action<JobFileText> change)
    {
        JobFileText file = new(sound);
        change(file);
        return Refusal(file.ToBytes());
    }

    /// <summary>What is seen in the file alone never opens the archive; what contradicts itself on the way leaves it empty.</summary>
    private string Refusal(byte[] file)
    {
        string path = folder.File("second.sqlite");
        string sentence = Assert.Throws<UserErrorException>(() => Import(file, () => ArchiveFile.Open(path))).Message;
        if (File.Exists(path))
        {
            using ArchiveFile archive = ArchiveFile.OpenExisting(path);
            Assert.Empty(archive.Jobs.All());
            Assert.Empty(archive.Sessions.All());
        }

        Assert.EndsWith(".", sentence, StringComparison.Ordinal);
        return sentence;
    }

    private static ImportedJob Import(byte[] bytes, Func<ArchiveFile> open)
    {
        using MemoryStream file = new(bytes, writable: false);
        return JobImport.Run(file, "hostile.lbjob", open);
    }
}
