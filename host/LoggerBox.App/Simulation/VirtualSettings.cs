using System;
using System.IO;
using LoggerBox.Capture.Link;
using LoggerBox.Host;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Simulation;

/// <summary>
/// What a host sent and the virtual logger works by from its next session on: plan and calibrations. With a card on a file they stand in a
/// file beside it, as a logger keeps them in its own flash; without one they go with the process. The clock is not kept: it has no battery.
/// </summary>
internal sealed class VirtualSettings
{
    private const string Ending = ".settings";

    private readonly string? path;
    private SessionHeader? calibrations;

    private VirtualSettings(string? path) => this.path = path;

    /// <summary>Null where none was sent.</summary>
    public PlanRecord? Plan { get; private set; }

    /// <param name="card">The card's file; null for a card in memory.</param>
    public static VirtualSettings Beside(string? card)
    {
        var settings = new VirtualSettings(card is null ? null : card + Ending);
        if (File.Exists(settings.path))
        {
            settings.Read(File.ReadAllBytes(settings.path));
        }

        return settings;
    }

    public void Apply(SessionHeader header)
    {
        if (calibrations is not null)
        {
            Copy(calibrations, header);
        }
    }

    public void Keep(PlanRecord plan)
    {
        Plan = Again(plan, new PlanRecord());
        Save();
    }

    public void Keep(CalibrationTable sent)
    {
        calibrations = new SessionHeader();
        sent.CopyTo(calibrations);
        Save();
    }

    // By way of its bytes: whoever gave it fills the object again.
    private static T Again<T>(IRecord record, T copy)
        where T : IRecord
    {
        var writer = new RecordWriter();
        var scan = new RecordScan(writer.Bytes, 0, writer.Write(record, 0, 0, 0));
        scan.MoveNext();
        scan.TryReadBody(copy);
        return copy;
    }

    private static void Copy(SessionHeader from, SessionHeader to)
    {
        var table = new CalibrationTable();
        table.CopyFrom(from);
        table.CopyTo(to);
    }

    private void Read(byte[] bytes)
    {
        var scan = new RecordScan(bytes, 0, bytes.Length);
        while (scan.MoveNext())
        {
            switch (scan.Envelope.Code)
            {
                case RecordCode.Plan:
                    var plan = new PlanRecord();
                    Plan = scan.TryReadBody(plan) ? plan : Plan;
                    break;
                case RecordCode.SessionHeader:
                    var header = new SessionHeader();
                    calibrations = scan.TryReadBody(header) ? header : calibrations;
                    break;
            }
        }
    }

    private void Save()
    {
        if (path is null)
        {
            return;
        }

        var writer = new RecordWriter();
        using var bytes = new MemoryStream();
        foreach (IRecord? record in (IRecord?[])[calibrations, Plan])
        {
            int length = record is null ? 0 : writer.Write(record, 0, 0, 0);
            bytes.Write(writer.Bytes, 0, length);
        }

        try
        {
            File.WriteAllBytes(path + ".new", bytes.ToArray());
            File.Move(path + ".new", path, overwrite: true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException(Messages.CardTrouble(path, error.Message));
        }
    }
}
