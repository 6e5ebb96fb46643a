using System.IO;

namespace LoggerBox.TruckSimulator.Demo;

/// <summary>The data sheet of the sample truck, as a shop would have typed it.</summary>
public static class SampleSheet
{
    public const string FileName = "sample-truck.toml";

    public static string Text()
    {
        using Stream stream = typeof(SampleSheet).Assembly.GetManifestResourceStream(FileName)
            ?? throw new InvalidDataException($"The program was built without {FileName}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
