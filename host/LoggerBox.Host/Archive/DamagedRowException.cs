using System;

namespace LoggerBox.Host.Archive;

/// <summary>A row holds what this program never writes there: a disk failed, or somebody wrote into the file. Never leaves this folder.</summary>
internal sealed class DamagedRowException(string what, Exception? cause = null) : Exception(what, cause);
