using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.IO;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>
/// Opens a job file: its CRC first, then every section, before anything of it is used. Sessions' bytes are loaded one at a time. Nothing is
/// allocated by a length that was not compared with a limit.
/// </summary>
internal sealed class JobFileReader
{
    // A session's values stand before its bytes; more of them than this is no session.
    private const int LongestSessionFields = 64 * 1024;

    private readonly Stream file;
    private readonly List<JobFileSession> sessions = [];
    private readonly List<Correction> corrections = [];
    private readonly List<GateTick> gates = [];
    private readonly List<ArchivedCalibration> calibrations = [];
    private JobFileFields? job;
    private (string Name, string Text) sheet = ("", "");
    private int smallBytes;

    private JobFileReader(Stream file, string name)
    {
        this.file = file;
        Name = name;
        CheckWhole();
        ReadSections();
        Content = new JobFileContent(JobFileValues.Job(job ?? throw new FormatException("it holds no job"), sheet, sessions, gates), sessions, corrections, calibrations);
    }

    /// <param name="file">Must know its length; read by this object alone.</param>
    /// <exception cref="UserErrorException">It is no job file, cut, damaged, newer, or holds what cannot be.</exception>
    public static JobFileReader Open(Stream file, string name)
    {
        try
        {
            return new JobFileReader(file, name);
        }
        catch (FormatException error)
        {
            throw JobFileErrors.Wrong(name, error.Message);
        }
    }

    /// <summary>Reads a file that has just been written, as whoever gets it will.</summary>
    /// <exception cref="FormatException">It holds what no reader takes.</exception>
    public static void Check(Stream file) => _ = new JobFileReader(file, "");

    public string Name { get; }

    public JobFileContent Content { get; }

    /// <exception cref="UserErrorException">The bytes are not those that the file's own check of the session names.</exception>
    public byte[] BytesOf(JobFileSession session)
    {
        byte[] bytes = new byte[session.Length];
        file.Position = session.Offset;
        file.ReadExactly(bytes);
        return Castagnoli.Of(bytes) == session.Crc ? bytes : throw JobFileErrors.Wrong(Name, $"session {session.Id} is not what its check says");
    }

    private void CheckWhole()
    {
        const int Shortest = JobFileFormat.HeaderLength + JobFileFormat.SectionHeadLength + JobFileFormat.CrcLength;
        byte[] buffer = new byte[64 * 1024];
        file.Position = 0;
        int start = file.ReadAtLeast(buffer.AsSpan(0, JobFileFormat.HeaderLength), JobFileFormat.HeaderLength, throwOnEndOfStream: false);
        if (!buffer.AsSpan(0, Math.Min(start, JobFileFormat.Magic.Length)).SequenceEqual(JobFileFormat.Magic[..Math.Min(start, JobFileFormat.Magic.Length)]) || start == 0)
        {
            throw JobFileErrors.NoJobFile(Name);
        }

        if (file.Length < Shortest)
        {
            throw JobFileErrors.Damaged(Name);
        }

        int version = BinaryPrimitives.ReadUInt16LittleEndian(buffer.AsSpan(JobFileFormat.Magic.Length));
        uint crc = Castagnoli.Start;
        file.Position = 0;
        for (long left = file.Length - JobFileFormat.CrcLength; left > 0;)
        {
            int read = file.Read(buffer, 0, (int)Math.Min(buffer.Length, left));
            crc = read > 0 ? Castagnoli.Append(crc, buffer.AsSpan(0, read)) : throw JobFileErrors.Damaged(Name);
            left -= read;
        }

        file.ReadExactly(buffer, 0, JobFileFormat.CrcLength);
        if (crc != BinaryPrimitives.ReadUInt32LittleEndian(buffer))
        {
            throw JobFileErrors.Damaged(Name);
        }

        if (version != JobFileFormat.Version)
        {
            throw JobFileErrors.Newer(Name, version);
        }
    }

    private void ReadSections()
    {
        byte[] head = new byte[JobFileFormat.SectionHeadLength];
        long at = JobFileFormat.HeaderLength;
        for (int count = 0; ; count++)
        {
            if (count == JobFileFormat.MostSections || file.Length - at < head.Length)
            {
                throw new FormatException("its sections do not end");
            }

            file.Position = at;
            file.ReadExactly(head);
            long length = BinaryPrimitives.ReadUInt32LittleEndian(head.AsSpan(1));
            at += head.Length;
            if (length > file.Length - at)
            {
                throw new FormatException($"a section claims {length} bytes and the file ends before them");
            }

            if ((JobFileSection)head[0] == JobFileSection.End)
            {
                RefuseUnlessLast(at, length);
                return;
            }

            Take((JobFileSection)head[0], at, length);
            at += length;
        }
    }

    private void RefuseUnlessLast(long at, long length)
    {
        if (length != JobFileFormat.CrcLength || at + length != file.Length)
        {
            throw new FormatException("something follows its end");
        }
    }

    private void Take(JobFileSection code, long at, long length)
    {
        switch (code)
        {
            case JobFileSection.Job:
                job = job is null ? JobFileFields.Read(Small(length), out _) : throw new FormatException("it holds two jobs");
                break;
            case JobFileSection.Sheet:
                byte[] content = Small(length);
                sheet = JobFileValues.Sheet(JobFileFields.Read(content, out ReadOnlySpan<byte> text), text);
                break;
            case JobFileSection.Session:
                TakeSession(at, length);
                break;
            case JobFileSection.Correction:
                corrections.Add(JobFileValues.Correction(JobFileFields.Read(Small(length), out _)));
                break;
            case JobFileSection.Gate:
                gates.Add(JobFileValues.Gate(JobFileFields.Read(Small(length), out _)));
                break;
            case JobFileSection.Calibration:
                calibrations.Add(JobFileValues.Calibration(JobFileFields.Read(Small(length), out _)));
                break;
            case < JobFileFormat.FirstOptional:
                throw JobFileErrors.Unknown(Name, (int)code);
            default:
                // Of a later program, which says that this one can do without.
                break;
        }
    }

    private void TakeSession(long at, long length)
    {
        byte[] start = new byte[(int)Math.Min(length, LongestSessionFields)];
        file.ReadExactly(start);
        JobFileFields fields = JobFileFields.Read(start, out ReadOnlySpan<byte> rest);
        int fieldsLength = start.Length - rest.Length;
        long bytes = length - fieldsLength;
        if (bytes is < 1 or > SessionIntake.LongestSession)
        {
            throw new FormatException($"a session claims {bytes} bytes, which no session has");
        }

        sessions.Add(JobFileValues.Session(fields, at + fieldsLength, (int)bytes));
    }

    private byte[] Small(long length)
    {
        smallBytes += (int)Math.Min(length, JobFileFormat.MostSmallBytes);
        if (length > JobFileFormat.LongestSmallSection || smallBytes > JobFileFormat.MostSmallBytes)
        {
            throw new FormatException("it holds more text than any job");
        }

        byte[] bytes = new byte[(int)length];
        file.ReadExactly(bytes);
        return bytes;
    }
}
