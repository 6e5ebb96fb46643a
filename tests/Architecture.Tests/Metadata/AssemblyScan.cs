using System;
using System.Collections.Generic;

namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>The types of an assembly, and name and version of each assembly that it needs.</summary>
internal sealed record AssemblyScan(IReadOnlyList<TypeScan> Types, IReadOnlyDictionary<string, Version> References);
