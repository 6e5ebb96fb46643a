using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Architecture.Tests.Metadata;
using Xunit;

namespace LoggerBox.Architecture.Tests.References;

/// <summary>The shop page shows what others found: it speaks HTTP and nothing else, and nobody else does.</summary>
public class ShopPageTests
{
    private static readonly AssemblyScan Shop = Scan("LoggerBox.Shop.dll");

    [Fact]
    public void Nobody_but_the_shop_page_speaks_HTTP() => Assert.All(
        (string[])["LoggerBox.Host.dll", "LoggerBox.TruckSimulator.dll", "loggerbox.dll"],
        name => Assert.DoesNotContain(Scan(name).References.Keys, reference => reference.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal)));

    [Fact]
    public void The_shop_page_knows_no_database_no_port_no_sheet_format_and_no_console() => Assert.Empty(
        Shop.References.Keys.Intersect(["Microsoft.Data.Sqlite", "Npgsql", "System.IO.Ports", "Tomlyn", "MathNet.Numerics", "System.CommandLine", "System.Console"]));

    /// <summary>The scan itself would let everything pass if it saw no reference at all.</summary>
    [Fact]
    public void The_scan_sees_that_the_shop_page_speaks_HTTP() => Assert.Contains(Shop.References.Keys, reference => reference.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal));

    [Fact]
    public void The_shop_page_asks_nobody_for_the_time_of_day()
    {
        string[] clocks = ["System.DateTime::get_Now", "System.DateTime::get_UtcNow", "System.DateTimeOffset::get_Now", "System.DateTimeOffset::get_UtcNow"];
        IEnumerable<string> broken =
            from type in Shop.Types
            from method in type.Methods
            where method.Instructions.Any(instruction => clocks.Contains(instruction.Operand))
            select $"{type.Type.FullName}.{method.Name}";
        Assert.Empty(broken);
    }

    private static AssemblyScan Scan(string name) => AssemblyReader.Read(Path.Combine(AppContext.BaseDirectory, name));
}
