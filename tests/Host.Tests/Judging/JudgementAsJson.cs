using System.IO;
using System.Linq;
using System.Text.Json;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

public sealed class JudgementAsJson
{
    [Fact]
    public void Members_stand_in_the_published_order()
    {
        var root = Written(new TestSession().Set(Step.StallForward, rpm: 2000));
        Assert.Equal(
            ["format", "rules", "unit", "truck", "sheet", "validity", "holds", "engagements", "checks", "suspects", "not_covered"],
            Names(root));
        Assert.Equal(["name", "source", "version"], Names(root.GetProperty("sheet")));
        Assert.Equal(["code", "effect", "step", "text"], Names(root.GetProperty("validity")[0]));
        Assert.Equal(["step", "gear", "start_s", "duration_s", "counts", "rpm", "main", "clutch", "converter"], Names(root.GetProperty("holds")[0]));
        Assert.Equal(["settled", "peak", "uncertainty"], Names(root.GetProperty("holds")[1].GetProperty("rpm")));
        Assert.Equal(["gear", "start_s", "fill_s", "rise_s", "total_s", "overshoot_percent"], Names(root.GetProperty("engagements")[0]));
        Assert.Equal(["step", "quantity", "value", "uncertainty", "unit", "min", "max", "verdict"], Names(root.GetProperty("checks")[0]));
        Assert.Equal(["code", "rank", "score", "for", "against", "next"], Names(root.GetProperty("suspects")[0]));
        Assert.Equal(["code", "text", "next"], Names(root.GetProperty("not_covered")[0]));
    }

    [Fact]
    public void Format_and_codes_are_the_published_ones()
    {
        var root = Written(new TestSession());
        Assert.Equal("loggerbox-judgement/1", root.GetProperty("format").GetString());
        Assert.Equal("psi", root.GetProperty("unit").GetString());
        Assert.Equal("truck.toml", root.GetProperty("sheet").GetProperty("name").GetString());
        Assert.All(root.GetProperty("checks").EnumerateArray(), check => Assert.Equal("in", check.GetProperty("verdict").GetString()));
        Assert.Equal(0, root.GetProperty("suspects").GetArrayLength());
        Assert.Equal("zero", root.GetProperty("holds")[0].GetProperty("step").GetString());
    }

    [Fact]
    public void What_is_missing_is_null()
    {
        var root = Written(new TestSession { GearsKnown = false, ForwardNeverFills = true }.Without(Channel.Clutch));
        var hold = root.GetProperty("holds").EnumerateArray().First(h => h.GetProperty("step").GetString() == "hold");
        Assert.Equal(JsonValueKind.Null, hold.GetProperty("gear").ValueKind);
        Assert.Equal(JsonValueKind.Null, hold.GetProperty("clutch").ValueKind);
        Assert.Equal(JsonValueKind.Null, root.GetProperty("engagements")[0].GetProperty("total_s").ValueKind);
        var check = root.GetProperty("checks").EnumerateArray().First(c => c.GetProperty("quantity").GetString() == "clutch");
        Assert.Equal("not-measured", check.GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Null, check.GetProperty("value").ValueKind);
    }

    [Theory]
    [InlineData(Verdict.In, "in")]
    [InlineData(Verdict.Low, "low")]
    [InlineData(Verdict.High, "high")]
    [InlineData(Verdict.CloseLow, "close-low")]
    [InlineData(Verdict.CloseHigh, "close-high")]
    [InlineData(Verdict.NotMeasured, "not-measured")]
    [InlineData(Verdict.Void, "void")]
    public void Verdicts_have_their_written_codes(Verdict verdict, string code) => Assert.Equal(code, JudgementJson.Code(verdict));

    private static JsonElement Written(TestSession session)
    {
        using var stream = new MemoryStream();
        JudgementJson.Write(Judged.Of(session), stream);
        return JsonDocument.Parse(stream.ToArray()).RootElement.Clone();
    }

    private static string[] Names(JsonElement element) => element.EnumerateObject().Select(member => member.Name).ToArray();
}
