namespace Tautline.Cli.Tests;

public sealed class HelpTests
{
    [Theory]
    [InlineData]
    [InlineData("plan")]
    [InlineData("why")]
    [InlineData("check")]
    [InlineData("compare")]
    [InlineData("catalog")]
    [InlineData("schema")]
    [InlineData("field")]
    [InlineData("field", "show")]
    [InlineData("field", "merge")]
    public void HelpTellsTheExitCodes(params string[] command)
    {
        using var folder = new CliFolder();
        var ran = folder.Run([.. command, "--help"]);
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        Assert.EndsWith(
            """
            Exit codes:
                0  fine
                1  the job has errors: there is no plan, only their report; or part of a field file is damaged and was left out
                2  the command line is wrong, or a file would be overwritten
                3  a file cannot be read or written
                4  a fault inside the program
              130  cancelled

            """.ReplaceLineEndings("\n"), ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void PlanHelpNamesEveryFlag()
    {
        using var folder = new CliFolder();
        var help = folder.Run("plan", "--help").Output;
        foreach (var flag in new[] { "--rules", "--rule-set", "--json", "--csv", "--by", "--units", "--all", "--built", "--out", "--force", "--spec", "--crs" })
            Assert.Contains(flag, help, StringComparison.Ordinal);
    }
}
