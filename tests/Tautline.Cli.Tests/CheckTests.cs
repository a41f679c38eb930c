using System.Text.Json;

namespace Tautline.Cli.Tests;

public sealed class CheckTests
{
    [Fact]
    public void AJobWithNotesPasses()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("check", "@job.json");
        Assert.Equal((ExitCode.Fine, "job.json: 1 warning, 1 note\n"), (ran.Exit, ran.Output));
        Assert.StartsWith("warning: job.json, take-off line 12: fence fabric", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryErrorIsReportedAtOnce()
    {
        using var folder = new CliFolder(Jobs.With("1.8288", "1.9").Replace("\"id\": \"ab\"", "\"id\": \"ab\", \"grade\": 1.2", StringComparison.Ordinal));
        var ran = folder.Run("check", "@job.json");
        Assert.Equal((ExitCode.Problems, "job.json: 2 errors\n"), (ran.Exit, ran.Output));
        Assert.Contains(
            "error: job.json, lines[0].vertices[0].leg.grade, line 7, column 87: A grade of 120 % cannot be fenced.\n"
            + "hint: Grades are at most 100 %; 12 % is written 0.12.\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonListsTheProblems()
    {
        using var folder = new CliFolder(Jobs.With("1.8288", "1.9"));
        var ran = folder.Run("check", "@job.json", "--json");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Error));
        using var json = JsonDocument.Parse(ran.Output);
        var only = Assert.Single(json.RootElement.EnumerateArray());
        Assert.Equal(("error", "SpecHeight"), (only.GetProperty("severity").GetString(), only.GetProperty("code").GetString()));
        Assert.Equal("job.json, specs[0].height, line 3, column 40", only.GetProperty("where").GetString());
    }

    [Fact]
    public void APartThatMustBeUnderstoodStopsThePlan()
    {
        using var folder = new CliFolder(Jobs.With("\"name\"", "\"mustUnderstand\": [\"arcs\"], \"name\""));
        var ran = folder.Run("plan", "@job.json");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
        Assert.Contains("The job says that 'arcs' must be understood, and this program does not know it.", ran.Error, StringComparison.Ordinal);
    }
}
