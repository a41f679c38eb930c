using System.Text.Json;

namespace Tautline.Cli.Tests;

public sealed class CatalogTests
{
    [Fact]
    public void RulesShowTheirSourceAndWhatToVerify()
    {
        using var folder = new CliFolder();
        var ran = folder.Run("catalog", "rules");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        Assert.Matches("bay.max +10 ft .*ASTM F567, 4.1, 2007", ran.Output);
        Assert.Matches("rail.stick +21 ft", ran.Output);
        Assert.Contains("verify", ran.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fabrics")]
    [InlineData("sections")]
    [InlineData("gate-posts")]
    [InlineData("posts")]
    [InlineData("parts")]
    [InlineData("rules")]
    public void EveryRowOfAPartHasASourceAndAConfidence(string part)
    {
        using var folder = new CliFolder();
        using var json = JsonDocument.Parse(folder.Run("catalog", part, "--json").Output);
        var rows = json.RootElement.GetProperty(part).EnumerateArray().ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, r =>
        {
            Assert.NotEqual("", r.GetProperty("source").GetString());
            var confidence = r.GetProperty("confidence").GetString();
            Assert.Contains(confidence, new[] { "published", "calculated", "from memory", "common practice" });
            Assert.Equal(confidence is "from memory" or "common practice", r.GetProperty("verify").GetBoolean());
        });
    }

    /// <summary>A 4-in leaf post in a fence over 6 ft: MIL-HDBK-1013/10 Table 1, 24 in wide, 36 in deep.</summary>
    [Fact]
    public void JsonIsInMetres()
    {
        using var folder = new CliFolder();
        using var json = JsonDocument.Parse(folder.Run("catalog", "gate-posts", "--json").Output);
        var row = json.RootElement.GetProperty("gate-posts").EnumerateArray()
            .Single(r => r.GetProperty("fenceOver").GetDouble() > 1 && Math.Abs(r.GetProperty("outsideDiameter").GetDouble() - 0.1016) < 1e-9);
        Assert.Equal(0.6096, row.GetProperty("holeDiameter").GetDouble(), 9);
        Assert.Equal(0.9144, row.GetProperty("holeDepth").GetDouble(), 9);
    }
}
