using System;
using System.IO;
using System.Text;

namespace LoggerBox.Host.Report;

/// <summary>A file that is there whole or not at all: written beside its place, then moved over it.</summary>
public static class WholeFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public static void Write(string path, string text)
    {
        string full = Path.GetFullPath(path);
        string folder = Path.GetDirectoryName(full) ?? ".";
        string beside = Path.Combine(folder, $".{Path.GetFileName(full)}.{Environment.ProcessId}.part");
        try
        {
            File.WriteAllText(beside, text, Utf8);
            File.Move(beside, full, overwrite: true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(beside))
            {
                File.Delete(beside);
            }

            throw new UserErrorException($"{path} could not be written ({Reason(error)}). Name a folder that exists and that you may write to.");
        }
    }

    private static string Reason(Exception error) => error switch
    {
        DirectoryNotFoundException => "its folder does not exist",
        UnauthorizedAccessException => "no permission",
        _ => error.Message,
    };
}
