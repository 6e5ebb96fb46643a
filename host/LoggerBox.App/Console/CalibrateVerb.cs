using System;
using System.CommandLine;
using System.Threading;
using LoggerBox.App.Calibration;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Link;

namespace LoggerBox.App.Console;

/// <summary>Zero and span of the pressure channels against a reference, stored on the logger and in the archive.</summary>
internal static class CalibrateVerb
{
    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var port = SharedOptions.Port();
        var show = new Option<bool>("--show") { Description = CalibrateMessages.ShowOption };
        var options = new CalibrationOptions(terminal, stop);
        var unit = SharedOptions.Unit();
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("calibrate", CalibrateMessages.Verb) { port, show, unit, archive, json };
        options.AddTo(verb);
        verb.Validators.Add(words =>
        {
            if (words.GetValue(json) && !words.GetValue(show))
            {
                words.AddError(CalibrateMessages.JsonWithShow);
            }
        });
        verb.SetAction(line =>
        {
            string path = line.GetValue(archive) ?? ArchiveFile.DefaultPath;
            if (line.GetValue(show))
            {
                HeldCalibrations.Show(terminal, line.GetRequiredValue(port), path, line.GetValue(unit), line.GetValue(json));
                return CommandLine.Done;
            }

            DateTimeOffset now = DateTimeOffset.Now;
            CalibrationOrder order = options.Order(line, line.GetValue(unit), DateOnly.FromDateTime(now.Date));

            // The archive first: what could not be written down must not be stored on the logger.
            using ArchiveFile file = ArchiveFile.Open(path);
            using HostLine open = HostLine.Open(line.GetRequiredValue(port));
            var logger = new LoggerConnection(open);
            HelloAnswer hello = logger.Hello();
            new CalibrationRun(terminal, order, logger, stop).Run(file, hello.LoggerId, now);
            return CommandLine.Done;
        });
        return verb;
    }
}
