using System;
using System.IO;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Tests.DataSheets;
using LoggerBox.Host.Tests.Sessions;

namespace LoggerBox.Fuzz.Targets;

/// <summary>A sound archive with something of everything in it.</summary>
internal static class SampleArchive
{
    public static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(-7));

    public static byte[] Session(uint number) => RecordedBytes.Session(number, seed: 1, sampleSets: 200).ToArray();

    public static void Fill(string path)
    {
        using ArchiveFile archive = ArchiveFile.Open(path);
        archive.Sessions.Add(Session(1), SessionOrigin.Fetched, "COM3", Now);
        archive.Sessions.Add(Session(2), SessionOrigin.Imported, "trace.csv", Now);
        byte[] third = Session(3);
        string arriving = archive.Incoming.Begin(new SessionIdentity(RecordedBytes.LoggerId, RecordedBytes.BootCount, 3), third.Length, SessionOrigin.Fetched, "COM3", Now);
        archive.Incoming.StorePart(arriving, 100, third[100..500]);
        archive.Jobs.Create(
            new JobDetails(
                Truck: "Sample truck", Serial: "0001", HourMeter: 8123.4, Fuel: "LPG", Complaint: "no power", Technician: "A. Fitter", SheetName: "sample.toml", SheetText: SampleSheet.Full,
                AltitudeMetres: 120, AirCelsius: -5.5, OilLevel: "full", OilLook: "clear", OilCelsius: 82.5, OilRead: "infrared"),
            Now);
        archive.Jobs.AddSessions("J1", ["S1", "S2"], Now, SessionRole.Before);
        archive.Corrections.DateSession("S1", Now, "A. Fitter", "clock was empty", Now);
        archive.Corrections.Add(new Correction("J1", "serial", "0002", "misread", "A. Fitter", Now));
        archive.Gates.Tick("J1", ["chocks", "stands"], "A. Fitter", "on stands", Now);
        archive.Gates.Withdraw("J1", ["chocks"], "A. Fitter", "", Now);
        archive.Jobs.Close("J1", Now.AddHours(4), "charge pump worn", "pump replaced");
    }

    public static byte[] JobFile(ArchiveFile archive)
    {
        using MemoryStream file = new();
        JobFileWriter.Write(archive, "J1", file);
        return file.ToArray();
    }
}
