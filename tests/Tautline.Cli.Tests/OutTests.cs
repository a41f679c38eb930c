namespace Tautline.Cli.Tests;

public sealed class OutTests
{
    [Fact]
    public void OutWritesTheFileAndNothingElse()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("plan", "@job.json", "--csv", "--out", "@list.csv");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Output));
        Assert.Equal(["job.json", "list.csv"], folder.Names);
        Assert.Equal(folder.Run("plan", "@job.json", "--csv").Output, File.ReadAllText(folder.Of("list.csv")));
    }

    [Fact]
    public void AFileThatExistsIsReplacedOnlyByForce()
    {
        using var folder = new CliFolder(Jobs.Line100).Put("list.csv", "mine");
        var ran = folder.Run("plan", "@job.json", "--csv", "--out", "@list.csv");
        Assert.Equal(ExitCode.Usage, ran.Exit);
        Assert.Equal("error: list.csv: The file exists already.\nhint: Give --force to replace it, or another name.\n", ran.Error);
        Assert.Equal("mine", File.ReadAllText(folder.Of("list.csv")));
        Assert.Equal(ExitCode.Fine, folder.Run("plan", "@job.json", "--csv", "--out", "@list.csv", "--force").Exit);
        Assert.StartsWith("number,part,", File.ReadAllText(folder.Of("list.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void AJobWithErrorsWritesNothing()
    {
        using var folder = new CliFolder(Jobs.With("1.8288", "1.9")).Put("list.csv", "mine");
        Assert.Equal(ExitCode.Problems, folder.Run("plan", "@job.json", "--json", "--out", "@plan.json").Exit);
        Assert.Equal(ExitCode.Problems, folder.Run("plan", "@job.json", "--csv", "--out", "@list.csv", "--force").Exit);
        Assert.Equal(["job.json", "list.csv"], folder.Names);
        Assert.Equal("mine", File.ReadAllText(folder.Of("list.csv")));
    }

    [Fact]
    public void AFailedWriteLeavesNothingHalf()
    {
        using var folder = new CliFolder(Jobs.Line100);
        Directory.CreateDirectory(folder.Of("taken"));
        var ran = folder.Run("plan", "@job.json", "--csv", "--out", "@taken", "--force");
        Assert.Equal(ExitCode.Unreadable, ran.Exit);
        Assert.Contains("error: taken: The file cannot be written: ", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["job.json", "taken"], folder.Names);
        Assert.Equal(ExitCode.Unreadable, folder.Run("plan", "@job.json", "--out", "@nowhere/list.txt").Exit);
        Assert.Equal(["job.json", "taken"], folder.Names);
    }
}
