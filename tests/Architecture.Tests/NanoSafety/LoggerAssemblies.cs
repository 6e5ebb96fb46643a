using System.Collections.Generic;
using System.Linq;
using LoggerBox.Architecture.Tests.Files;
using LoggerBox.Architecture.Tests.Metadata;

namespace LoggerBox.Architecture.Tests.NanoSafety;

/// <summary>The two assemblies as they were compiled for the logger.</summary>
internal static class LoggerAssemblies
{
    public static AssemblyScan Protocol { get; } = Read("shared-protocol", "LoggerBox.Protocol");

    public static AssemblyScan Capture { get; } = Read("firmware/capture", "LoggerBox.Capture");

    public static IReadOnlySet<string> Enums { get; } = Protocol.Types.Concat(Capture.Types).Where(type => type.IsEnum).Select(type => type.Type.FullName).ToHashSet();

    public static IEnumerable<TypeScan> AllTypes => Protocol.Types.Concat(Capture.Types);

    private static AssemblyScan Read(string folder, string name) =>
        AssemblyReader.Read(Repository.PathOf($"{folder}/bin/{Repository.Configuration}/netnano1.0/{name}.dll"));
}
