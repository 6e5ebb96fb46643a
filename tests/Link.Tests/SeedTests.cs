using System;
using System.Diagnostics;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Link.Tests.Line;
using LoggerBox.Link.Tests.VirtualTime;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Link.Tests;

public class SeedTests(ITestOutputHelper output)
{
    [Fact]
    public void Probe()
    {
        foreach (LineQuality line in new[] { LineQuality.Usb115200, LineQuality.Usb921600 })
        {
            foreach (double rate in new[] { 0, 1e-6, 1e-5, 1e-4, 1e-3 })
            {
                double sum = 0, min = 9;
                Stopwatch watch = Stopwatch.StartNew();
                long sent = 0;
                for (int seed = 0; seed < 10; seed++)
                {
                    string path = $"/dev/shm/line-probe-{Environment.ProcessId}.sqlite";
                    using (ArchiveFile archive = ArchiveFile.Open(path))
                    {
                        RecordLog log = RandomSession.Log(131_072, seed);
                        VirtualDownload download = new(archive, log, line with { BitErrorRate = rate }, seed * 2);
                        download.Run();
                        Assert.Equal(RandomSession.BytesOf(log), archive.Sessions.Load("S1").Bytes);
                        double share = 131_072 / line.BytesPerSecond / download.Clock.Elapsed.TotalSeconds;
                        sum += share;
                        sent += download.Line.ToHost.Sent;
                        min = Math.Min(min, share);
                    }
                    System.IO.File.Delete(path);
                    System.IO.File.Delete(path + "-wal");
                    System.IO.File.Delete(path + "-shm");
                }
                output.WriteLine($"{line.Baud} {rate}: mean {sum / 10:P2} min {min:P2} sent {131072.0 * 10 / sent:P2} in {watch.ElapsedMilliseconds} ms");
            }
        }
    }
}
