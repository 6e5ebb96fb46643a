using System;
using Xunit;
using Xunit.Sdk;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>A test of a class that is run once for each database; see <see cref="InPostgresAttribute"/> for when it is left out.</summary>
[XunitTestCaseDiscoverer("LoggerBox.Host.Tests.Archive.Places." + nameof(StoreFactDiscoverer), "LoggerBox.Host.Tests")]
public sealed class StoreFactAttribute : FactAttribute;

/// <summary>The same with rows of data.</summary>
[XunitTestCaseDiscoverer("LoggerBox.Host.Tests.Archive.Places." + nameof(StoreTheoryDiscoverer), "LoggerBox.Host.Tests")]
public sealed class StoreTheoryAttribute : TheoryAttribute;

/// <summary>The tests of this class need a PostgreSQL server, and are left out, or fail, as <see cref="PostgresFactAttribute"/> says.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class InPostgresAttribute : Attribute;
