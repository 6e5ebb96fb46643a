using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>Writes a whole job as one file: the records as received, and all that people wrote.</summary>
public sealed class JobFileWriter
{
    private readonly Stream output;
    private uint crc = Castagnoli.Start;

    private JobFileWriter(Stream output) => this.output = output;

    /// <param name="output">Read again after it is written: what the reader would refuse somewhere else is refused here, where it can still be mended.</param>
    /// <exception cref="UserErrorException">No such job, one of its sessions has arrived only in part, or it is more than a job file holds.</exception>
    public static void Write(ArchiveFile archive, string jobId, Stream output)
    {
        Job job = archive.Jobs.AsWritten(jobId);
        try
        {
            new JobFileWriter(output).Write(archive, job);
            output.Position = 0;
            JobFileReader.Check(output);
        }
        catch (Exception error) when (error is FormatException or EncoderFallbackException)
        {
            throw JobFileErrors.CannotExport(job.Id, error is FormatException ? error.Message : "a text of it is no Unicode");
        }
    }

    private void Write(ArchiveFile archive, Job job)
    {
        Header();
        Section(JobFileSection.Job, OfJob(job).ToBytes(), []);
        Section(JobFileSection.Sheet, OfSheet(job.Details.SheetName).ToBytes(), Encoding.UTF8.GetBytes(job.Details.SheetText));
        List<Correction> corrections = [.. archive.Corrections.Of(job.Id)];
        foreach (JobSession session in job.Sessions)
        {
            byte[] bytes = archive.Sessions.Bytes(session.Id);
            Section(JobFileSection.Session, OfSession(archive.Sessions.Find(session.Id), session.Role).ToBytes(), bytes);
            corrections.AddRange(archive.Corrections.Of(session.Id));
        }

        foreach (Correction correction in corrections)
        {
            Section(JobFileSection.Correction, OfCorrection(correction).ToBytes(), []);
        }

        foreach (GateTick tick in job.Gates)
        {
            Section(JobFileSection.Gate, OfGate(tick).ToBytes(), []);
        }

        foreach (ArchivedCalibration one in job.SessionIds.Select(id => archive.Sessions.Find(id).Identity.LoggerId).Distinct().SelectMany(archive.Calibrations.Of))
        {
            Section(JobFileSection.Calibration, OfCalibration(one).ToBytes(), []);
        }

        End();
    }

    private static JobFileFields OfJob(Job job) => new JobFileFields()
        .Add("id", job.Id)
        .Add("uid", job.Uid)
        .Add("truck", job.Details.Truck)
        .Add("serial", job.Details.Serial)
        .Add("hours", job.Details.HourMeter)
        .Add("fuel", job.Details.Fuel)
        .Add("complaint", job.Details.Complaint)
        .Add("cause", job.Cause)
        .Add("correction", job.Correction)
        .Add("technician", job.Details.Technician)
        .Add("altitude_m", job.Details.AltitudeMetres)
        .Add("air_c", job.Details.AirCelsius)
        .Add("oil_level", job.Details.OilLevel)
        .Add("oil_look", job.Details.OilLook)
        .Add("oil_c", job.Details.OilCelsius)
        .Add("oil_read", job.Details.OilRead)
        .Add("opened", job.Opened)
        .Add("closed", job.Closed);

    // A sheet of the shop's may be called a:b on Linux; in the file stands a name for every system.
    private static JobFileFields OfSheet(string name) =>
        new JobFileFields().Add("name", string.Join('_', name.Split(JobFileFormat.InNoFileName)));

    private static JobFileFields OfSession(ArchivedSession row, SessionRole role) => new JobFileFields()
        .Add("id", row.Id)
        .Add("logger", row.Identity.LoggerId)
        .Add("boot", row.Identity.BootCount)
        .Add("number", row.Identity.SessionNumber)
        .Add("origin", SessionColumns.Written(row.Origin))
        .Add("source", row.Source)
        .Add("stored", row.Stored)
        .Add("role", JobColumns.Written(role))
        .Add("crc", row.Crc ?? 0);

    private static JobFileFields OfCorrection(Correction correction) => new JobFileFields()
        .Add("subject", correction.Subject)
        .Add("field", correction.Field)
        .Add("value", correction.Value)
        .Add("reason", correction.Reason)
        .Add("technician", correction.Technician)
        .Add("made", correction.Made);

    private static JobFileFields OfGate(GateTick tick) => new JobFileFields()
        .Add("gate", tick.Gate)
        .Add("withdrawn", tick.Withdrawn ? 1L : 0L)
        .Add("by", tick.By)
        .Add("note", tick.Note)
        .Add("made", tick.Made);

    private static JobFileFields OfCalibration(ArchivedCalibration one) => new JobFileFields()
        .Add("logger", one.LoggerId)
        .Add("channel", one.Channel)
        .Add("zero_counts", one.ZeroCounts)
        .Add("span_counts", one.SpanCounts)
        .Add("span_pa", one.SpanPascal)
        .Add("accuracy_pa", one.AccuracyPascal)
        .Add("transducer", one.Transducer)
        .Add("reference", one.Reference)
        .Add("certificate", one.Certificate)
        .Add("certified_on", CalibrationRows.Written(one.CertifiedOn))
        .Add("reference_due", CalibrationRows.Written(one.ReferenceDue))
        .Add("due", CalibrationRows.Written(one.Due))
        .Add("by", one.By)
        .Add("points", one.Points)
        .Add("made", one.Made);

    private void Header()
    {
        byte[] header = new byte[JobFileFormat.HeaderLength];
        JobFileFormat.Magic.CopyTo(header);
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(JobFileFormat.Magic.Length), JobFileFormat.Version);
        Put(header);
    }

    private void Section(JobFileSection code, byte[] fields, byte[] content)
    {
        Head(code, fields.Length + content.Length);
        Put(fields);
        Put(content);
    }

    private void End()
    {
        Head(JobFileSection.End, JobFileFormat.CrcLength);
        byte[] check = new byte[JobFileFormat.CrcLength];
        BinaryPrimitives.WriteUInt32LittleEndian(check, crc);
        Put(check);
    }

    private void Head(JobFileSection code, int length)
    {
        byte[] head = new byte[JobFileFormat.SectionHeadLength];
        head[0] = (byte)code;
        BinaryPrimitives.WriteUInt32LittleEndian(head.AsSpan(1), (uint)length);
        Put(head);
    }

    private void Put(byte[] bytes)
    {
        crc = Castagnoli.Append(crc, bytes);
        output.Write(bytes);
    }
}
