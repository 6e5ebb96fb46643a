using System;
using System.IO;
using System.Linq;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Tests.Archive;

namespace LoggerBox.Fuzz.Targets;

/// <summary>
/// A job file changed above its CRC is refused; below it, with the CRC made again, it is refused or imported: whole, so that a second time
/// nothing is new, and sound, so that it can be exported again.
/// </summary>
internal sealed class JobFileTarget : FuzzTarget
{
    private readonly ScratchFolder folder = new();
    private readonly byte[] sound;

    public JobFileTarget()
    {
        SampleArchive.Fill(folder.File("first.sqlite"));
        using ArchiveFile archive = ArchiveFile.Open(folder.File("first.sqlite"));
        sound = SampleArchive.JobFile(archive);
    }

    public override long MostBytes => 64 << 20;

    public override string? Try(Random random)
    {
        folder.Clear();
        bool raw = random.Next(4) == 0;
        byte[] file = raw ? ByteMutation.Of(sound, random) : Changed(random);
        ImportedJob first = Import(file);
        if (raw && !file.AsSpan().SequenceEqual(sound))
        {
            return "a file that its CRC does not fit was imported";
        }

        ImportedJob second = Import(file);
        using ArchiveFile archive = ArchiveFile.OpenExisting(folder.File("second.sqlite"));
        foreach (string session in second.Sessions)
        {
            archive.Sessions.Load(session);
        }

        return second.Changed ? "a second import changed something"
            : second.Id != first.Id ? "a second import made another job"
            : Refusal(() => SampleArchive.JobFile(archive));
    }

    protected override void Dispose(bool disposing)
    {
        folder.Dispose();
        base.Dispose(disposing);
    }

    private ImportedJob Import(byte[] file)
    {
        using MemoryStream stream = new(file);
        return JobImport.Run(stream, "fuzz.lbjob", () => ArchiveFile.Open(folder.File("second.sqlite")));
    }

    private byte[] Changed(Random random)
    {
        JobFileText text = new(sound);
        for (int change = random.Next(1, 4); change > 0 && text.Sections.Count > 0; change--)
        {
            int at = random.Next(text.Sections.Count);
            (byte code, byte[] content) = text.Sections[at];
            switch (random.Next(8))
            {
                case 0:
                    text.Sections.RemoveAt(at);
                    break;
                case 1:
                    text.Sections.Insert(random.Next(text.Sections.Count), (code, content));
                    break;
                case 2:
                    text.Sections[at] = ((byte)random.Next(256), content);
                    break;
                case 3:
                    text.Header[random.Next(text.Header.Length)] = (byte)random.Next(256);
                    break;
                default:
                    // The values stand before a session's bytes: hit them as often as those.
                    int part = Math.Min(content.Length, random.Next(2) == 0 ? 200 : content.Length);
                    text.Sections[at] = (code, [.. ByteMutation.Of(content[..part], random), .. content[part..]]);
                    break;
            }
        }

        uint lie = uint.MaxValue >> random.Next(32);
        byte liar = random.Next(4) == 0 ? text.Sections.Select(section => section.Code).Append((byte)255).ElementAt(random.Next(text.Sections.Count + 1)) : (byte)0;
        return text.ToBytes(code => code == liar ? lie : 0);
    }
}
