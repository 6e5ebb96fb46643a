using System;
using System.IO;
using System.Text;

namespace LoggerBox.Host.Report;

/// <summary>A file that is there whole or not at all: written beside its place, then moved over it.</summary>
public static class WholeFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public static void Write(string path, string text) => Write(path, file => file.Write(Utf8.GetBytes(text)));

    /// <param name="content">Writes the file; what it throws leaves no file.</param>
    public static void Write(string path, Action<Stream> content)
    {
        string full = Path.GetFullPath(path);
        string folder = Path.GetDirectoryName(full) ?? ".";
        string beside = Path.Combine(folder, $".{Path.GetFileName(full)}.{Environment.ProcessId}.part");
        try
        {
            using (FileStream file = new(beside, FileMode.Create))
            {
                content(file);
            }

            File.Move(beside, full, overwrite: true);
        }
        catch (Exception error)
        {
            if (File.Exists(beside))
            {
                File.Delete(beside);
            }

            if (error is not (IOException or UnauthorizedAccessException))
            {
                throw;
            }

            throw new UserErrorException($"{path} could not be written ({Reason(error).Replace(beside, full, StringComparison.Ordinal).TrimEnd('.')}). Name a folder that exists and that you may write to.");
        }
    }

    private static string Reason(Exception error) => error switch
    {
        DirectoryNotFoundException => "its folder does not exist",
        UnauthorizedAccessException => "no permission",
        _ => error.Message,
    };
}
