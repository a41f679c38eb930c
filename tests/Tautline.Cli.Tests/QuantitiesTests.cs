using System.Text.Json;

namespace Tautline.Cli.Tests;

/// <summary>Net quantities by place. Figures are those of docs/checks/first-light.md, part B.</summary>
public sealed class QuantitiesTests
{
    [Fact]
    public void CsvByRunReadsBackWithTheHandCount()
    {
        using var folder = new CliFolder(Jobs.Yard);
        var rows = CsvBack.Rows(folder.Run("plan", "@job.json", "--csv", "quantities").Output);
        string Net(string place, string run, string part) => Assert.Single(rows, r => (r["line"], r["place"], r["run"], r["part"]) == ("yard", place, run, part))["net"];
        Assert.Equal("19.640625", Net("run", "1", "rail")); // 235.6875 in / 12
        Assert.Equal(("10", "10", "2"), (Net("run", "1", "rail-tie"), Net("run", "1", "ring"), Net("run", "1", "tension-bar")));
        Assert.Equal("47", Net("run", "6", "ring"));
        Assert.Equal(("8", "23", "138"), (Net("terminals", "", "post"), Net("line-posts", "", "post"), Net("line-posts", "", "post-tie")));
        Assert.Equal("6", Net("gates", "", "hinge-set"));
        Assert.Equal(folder.Run("plan", "@job.json", "--csv", "quantities").Output, folder.Run("plan", "@job.json", "--csv", "--by", "run").Output);
    }

    [Fact]
    public void CsvByLinePutsThePlacesOfALineTogether()
    {
        using var folder = new CliFolder(Jobs.Yard);
        var rows = CsvBack.Rows(folder.Run("plan", "@job.json", "--csv", "--by", "line").Output);
        Assert.All(rows, r => Assert.Equal(("line", "yard", ""), (r["place"], r["line"], r["run"])));
        Assert.Equal(["23", "8"], rows.Where(r => r["part"] == "post").Select(r => r["net"]));
        Assert.Equal("12", Assert.Single(rows, r => r["part"] == "tension-bar")["net"]);
    }

    [Fact]
    public void TextTellsThemUnderTheTakeoffAndThatNothingIsBoughtByPlace()
    {
        using var folder = new CliFolder(Jobs.Yard);
        var (plain, by) = (folder.Run("plan", "@job.json").Output, folder.Run("plan", "@job.json", "--by", "run").Output);
        Assert.DoesNotContain("Quantities by", plain, StringComparison.Ordinal);
        var (takeoff, start) = (by.IndexOf("\nTake-off\n", StringComparison.Ordinal), by.IndexOf("\nQuantities by run\n", StringComparison.Ordinal));
        Assert.InRange(takeoff, 0, start);
        var text = by[start..by.IndexOf("\nProblems\n", StringComparison.Ordinal)];
        Assert.Contains("What is bought is for the whole job", text, StringComparison.Ordinal);
        Assert.Equal(
            ["Line yard, run 1", "Line yard, run 2", "Line yard, run 3", "Line yard, run 4", "Line yard, run 5", "Line yard, run 6", "Line yard, terminals",
                "Line yard, line posts", "Line yard, gates"],
            text.Split('\n').Where(l => l.StartsWith("Line ", StringComparison.Ordinal)));
        Assert.Contains("19' 7 11/16\"", text, StringComparison.Ordinal); // the rail of run 1
    }

    [Fact]
    public void JsonHoldsTheQuantitiesAloneInMetres()
    {
        using var folder = new CliFolder(Jobs.Yard);
        using var json = JsonDocument.Parse(folder.Run("plan", "@job.json", "--json", "--by", "line").Output);
        using var plan = JsonDocument.Parse(folder.Run("plan", "@job.json", "--json").Output);
        Assert.Equal("yard-job", json.RootElement.GetProperty("job").GetString());
        var rail = Assert.Single(json.RootElement.GetProperty("quantities").EnumerateArray(), q => q.GetProperty("part").GetString() == "rail");
        Assert.Equal(84.7598, rail.GetProperty("net").GetDouble(), 9); // 3337 in x 0.0254
        Assert.Equal(("line", "yard", "length"), (rail.GetProperty("place").GetString(), rail.GetProperty("line").GetString(), rail.GetProperty("netUnit").GetString()));
        Assert.False(plan.RootElement.TryGetProperty("quantities", out _));
    }

    [Fact]
    public void TemporaryFenceIsAPlaceOfItsOwn()
    {
        using var folder = new CliFolder(Jobs.With("\"lines\":", "\"temporary\": [{ \"id\": \"panels\", \"length\": 30.48, \"panel\": 3.048 }], \"lines\":"));
        var row = Assert.Single(CsvBack.Rows(folder.Run("plan", "@job.json", "--csv", "--by", "line").Output), r => r["part"] == "temporary-stand");
        Assert.Equal(("temporary", "", "panels", "11"), (row["place"], row["line"], row["temporary"], row["net"])); // 10 panels of 10 ft and one stand more
        Assert.Contains("\nTemporary fence panels\n", folder.Run("plan", "@job.json", "--by", "run").Output, StringComparison.Ordinal);
    }
}
