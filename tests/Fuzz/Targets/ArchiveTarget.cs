using System;
using System.IO;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Tests.Sessions;

namespace LoggerBox.Fuzz.Targets;

/// <summary>An archive with bytes of its file changed, or rows that cannot be: each thing that is asked of it is done or refused.</summary>
internal sealed class ArchiveTarget : FuzzTarget
{
    private static readonly byte[] Whole = SampleArchive.Session(9);

    private readonly ScratchFolder folder = new();
    private readonly byte[] image;

    public ArchiveTarget()
    {
        SampleArchive.Fill(folder.File("archive.sqlite"));
        image = File.ReadAllBytes(folder.File("archive.sqlite"));
    }

    // A row may be long, but no longer than the file; what it only claims must not be allocated.
    public override long MostBytes => 128 << 20;

    public override string? Try(Random random)
    {
        byte[] damaged = [.. image];
        bool raw = random.Next(2) == 0;
        if (raw)
        {
            ByteMutation.InPlace(damaged, random, most: 12);
        }

        string path = folder.File("archive.sqlite", raw && random.Next(4) == 0 ? damaged[..random.Next(damaged.Length)] : damaged);
        if (!raw)
        {
            RowDamage.Do(path, random);
        }

        return Looked(path) ?? Written(path);
    }

    protected override void Dispose(bool disposing)
    {
        folder.Dispose();
        base.Dispose(disposing);
    }

    private static string? Looked(string path)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        string? wrong = Refusal(() =>
        {
            foreach (ArchivedSession session in file.Sessions.All())
            {
                file.Sessions.Find(session.Id);
            }
        });
        wrong ??= Refusal(() => file.Jobs.All());
        wrong ??= Refusal(() => SampleArchive.JobFile(file));
        wrong ??= Refusal(() =>
        {
            Job job = file.Jobs.Load("J1");
            DataSheetReader.Parse(job.Details.SheetText, job.Details.SheetName);
        });
        foreach (string id in (string[])["S1", "S2", "S3"])
        {
            wrong ??= Refusal(() => file.Sessions.Load(id)) ?? Refusal(() => file.Incoming.Missing(id)) ?? Refusal(() => file.Corrections.Of(id));
        }

        return wrong;
    }

    private static string? Written(string path)
    {
        using ArchiveFile file = ArchiveFile.Open(path);
        byte[] third = SampleArchive.Session(3);
        SessionIdentity identity = new(RecordedBytes.LoggerId, RecordedBytes.BootCount, 3);
        return Refusal(() => file.Sessions.Add(Whole, SessionOrigin.Fetched, "COM3", SampleArchive.Now))
            ?? Refusal(() => file.Jobs.AddSessions(file.Jobs.Create(new JobDetails(), SampleArchive.Now), ["S1", "S2"], SampleArchive.Now))
            ?? Refusal(() =>
            {
                string id = file.Incoming.Begin(identity, third.Length, SessionOrigin.Fetched, "COM3", SampleArchive.Now);
                file.Incoming.StorePart(id, 0, third);
                file.Incoming.Complete(id);
            });
    }
}
