using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.DataSheets;
using Xunit;

namespace LoggerBox.Host.Tests.DataSheets;

public class SheetRefusalTests
{
    [Theory]
    [InlineData("", 1, "empty")]
    [InlineData("# nothing but a remark\n", 1, "empty")]
    [InlineData("[truck]\nnmae = \"x\"\n", 2, "truck.nmae is no key")]
    [InlineData("[trunk]\nname = \"x\"\n", 1, "trunk is no key")]
    [InlineData("[engine]\nidle_rpm = { min = 640, maks = 700 }\n", 2, "engine.idle_rpm.maks is no key")]
    [InlineData("[engine]\nidle_rmp = { min = 640 }\n", 2, "engine.idle_rmp is no key")]
    [InlineData("[engine.LPG]\nidel_rpm = { min = 640 }\n", 2, "engine.LPG.idel_rpm is no key")]
    [InlineData("[engine]\ngoverned_rpm = { nominal = 2450 }\n", 2, "nominal without tolerance")]
    [InlineData("[engine]\nidle_rpm = { min = 760,\n max = 640 }\n", 2, "min 760 above its max 640")]
    [InlineData("[engine]\nidle_rpm = { min = nan }\n", 2, "nan")]
    [InlineData("[engine]\nidle_rpm = { max = inf }\n", 2, "inf")]
    [InlineData("[engine]\nidle_rpm = { max = 1e999 }\n", 2, "inf")]
    [InlineData("[engine]\nidle_rpm = { min = \"640\" }\n", 2, "the text \"640\" where a number belongs")]
    [InlineData("[engine]\nidle_rpm = { min = true }\n", 2, "true where a number belongs")]
    [InlineData("[engine]\nidle_rpm = { min = [640] }\n", 2, "a list where a number belongs")]
    [InlineData("[engine]\nidle_rpm = { min = 1979-05-27 }\n", 2, "a date or time where a number belongs")]
    [InlineData("[engine]\nidle_rpm = 700\n", 2, "is no limit")]
    [InlineData("[engine]\nidle_rpm = { min = -640 }\n", 2, "-640, outside 0 to 10000 rpm")]
    [InlineData("[engine]\nidle_rpm = { max = 64000 }\n", 2, "outside")]
    [InlineData("[engine]\nrun_up_s = { max = -1 }\n", 2, "outside 0 to 3600 seconds")]
    [InlineData("[engine]\nidle_rpm = {}\n", 2, "has no figure")]
    [InlineData("[engine]\nidle_rpm = { min = 1, nominal = 2, tolerance = 1 }\n", 2, "mixes forms")]
    [InlineData("[engine]\nidle_rpm = { min = 1, tolerance = 1 }\n", 2, "tolerance without a nominal")]
    [InlineData("[engine]\nidle_rpm = { nominal = 700, tolerance = 1, tolerance_percent = 3 }\n", 2, "more than one tolerance")]
    [InlineData("[engine]\nidle_rpm = { nominal = 700, below = 20 }\n", 2, "only one of below and above")]
    [InlineData("[engine]\nidle_rpm = { nominal = 700, tolerance = 800 }\n", 2, "larger than its nominal")]
    [InlineData("[engine]\nfuel = \"LPG\"\n[engine.petrol]\nidle_rpm = { min = 1 }\n", 2, "no table [engine.LPG]")]
    [InlineData("[pressure]\nunit = \"furlong\"\n", 2, "pressure.unit is \"furlong\"")]
    [InlineData("[pressure]\nunit = 4\n", 2, "the number 4 where a text")]
    [InlineData("\n[pressure.idle]\nmain = { min = 1 }\n", 2, "no unit")]
    [InlineData("[pressure]\nunit = \"psi\"\n[pressure.hold]\nmain = { min = 1 }\nrmp = 2000\n", 5, "pressure.hold.rmp is no key")]
    [InlineData("[pressure]\nunit = \"psi\"\n[pressure.hold.foward]\nmain = { min = 1 }\n", 3, "pressure.hold.foward is no key")]
    [InlineData("[pressure]\nunit = \"psi\"\n[pressure.stall.neutral]\nmain = { min = 1 }\n", 3, "pressure.stall.neutral is no key")]
    [InlineData("[pressure]\nunit = \"psi\"\n[pressure.hold]\nrpm = -2000\n", 4, "outside 100 to 10000 rpm")]
    [InlineData("[pressure]\nunit = \"psi\"\nidle = 3\n", 3, "the number 3 where a table [pressure.idle]")]
    [InlineData("[pressure]\nunit = \"psi\"\n[pressure.at]\nrpm = 1000\n", 3, "[[pressure.at]]")]
    [InlineData("[pressure]\nunit = \"psi\"\n[[pressure.at]]\nmain = { min = 1 }\n", 3, "has no rpm")]
    [InlineData("[pressure]\nunit = \"psi\"\n[[pressure.at]]\nrpm = 1000\n[[pressure.at]]\nrpm = 1000\n", 5, "two rows for 1000 rpm")]
    [InlineData("[difference]\nclutch_forward_reverse = { max = 5 }\n", 1, "needs a unit")]
    [InlineData("[stall]\nlimit_s = 0\n", 2, "outside 1 to 60 seconds")]
    [InlineData("[stall]\nreverse_allowed = \"no\"\n", 2, "where true or false belongs")]
    [InlineData("[ports]\nclutch = \"both\"\n", 2, "write \"common\" or \"per-gear\"")]
    [InlineData("[pickup]\npulses_per_rev = 0\n", 2, "outside")]
    [InlineData("[site]\naltitude_m = 99999\n", 2, "metres")]
    [InlineData("[truck]\nname = \"a\"\nname = \"b\"\n", 3, "truck.name is given twice; it stands in line 2")]
    [InlineData("[truck]\nname = \"a\"\n[oil]\n[truck]\nsource = \"b\"\n", 4, "truck is given twice")]
    [InlineData("[truck]\nname = \n", 2, "not valid TOML")]
    [InlineData("[truck\nname = \"x\"\n", 1, "not valid TOML")]
    [InlineData("[truck]\nname = \"x\n", 2, "not valid TOML")]
    public void What_cannot_be_right_is_refused_with_its_line(string text, int line, string saying)
    {
        var error = Assert.Throws<UserErrorException>(() => DataSheetReader.Parse(text, "s.toml"));
        Assert.StartsWith($"s.toml, line {line}: ", error.Message, StringComparison.Ordinal);
        Assert.Contains(saying, error.Message, StringComparison.Ordinal);
        Assert.False(error.Usage);
    }

    /// <summary>1 psi is 6.894757 kPa (NIST SP 811, B.8): 136 psi is 937.7 kPa. 1.5 percent of the larger figure is the limit.</summary>
    [Theory]
    [InlineData(940, 136, true)]
    [InlineData(951.9, 136, true)]
    [InlineData(952.1, 136, false)]
    [InlineData(923.7, 136, true)]
    [InlineData(923.5, 136, false)]
    public void Two_units_may_differ_by_rounding_and_no_more(double kilopascal, double psi, bool accepted)
    {
        string text = FormattableString.Invariant($"[pressure]\nunit = \"kPa\"\n[pressure.hold]\nmain = {{ min = {kilopascal}, also = {{ unit = \"psi\", min = {psi} }} }}\n");
        if (accepted)
        {
            DataSheetReader.Parse(text, "s.toml");
            return;
        }

        var error = Assert.Throws<UserErrorException>(() => DataSheetReader.Parse(text, "s.toml"));
        Assert.StartsWith("s.toml, line 4: pressure.hold.main.also disagrees: min 136 psi is 937.69 kPa", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_lists_every_error_in_order_of_lines()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("bad.toml");
        File.WriteAllText(path, "[truck]\nnmae = \"x\"\n[engine]\nidle_rpm = { nominal = 700 }\ngoverned_rpm = { min = 3, max = 2 }\n[pressure]\nunit = \"psi\"\nunits = 3\n");
        Assert.Equal([2, 4, 5, 8], DataSheetReader.Check(path).Select(finding => finding.Line));
        var error = Assert.Throws<UserErrorException>(() => DataSheetReader.Read(path));
        Assert.Contains("3 more errors", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_of_a_usable_sheet_warns_of_what_is_doubtful()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("thin.toml");
        File.WriteAllText(path, "[truck]\nname = \"x\"\n[pressure]\nunit = \"psi\"\n[pressure.hold]\nmain = { min = 3, max = 4, also = { unit = \"bar\", min = 0.207 } }\n");
        Assert.Equal([(1, FindingLevel.Warning), (6, FindingLevel.Warning)], DataSheetReader.Check(path).Select(finding => (finding.Line, finding.Level)));
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_named()
    {
        using var folder = new TemporaryFolder();
        string binary = folder.File("picture.toml");
        File.WriteAllBytes(binary, [0x89, 0x50, 0xFF, 0xFE]);
        Assert.Contains("UTF-8", Assert.Throws<UserErrorException>(() => DataSheetReader.Read(binary)).Message, StringComparison.Ordinal);
        foreach (string path in new[] { folder.File("none.toml"), folder.Path })
        {
            Assert.Contains(path, Assert.Throws<UserErrorException>(() => DataSheetReader.Read(path)).Message, StringComparison.Ordinal);
        }
    }
}
