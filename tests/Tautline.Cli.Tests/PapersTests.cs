using System.Text;

namespace Tautline.Cli.Tests;

/// <summary>Papers made on the command line.</summary>
public sealed class PapersTests
{
    private static string Sample(string name)
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "Tautline.slnx"))) root = root.Parent!;
        return Path.Combine(root.FullName, "samples", name);
    }

    private static string Start(string path) => Encoding.ASCII.GetString(File.ReadAllBytes(path), 0, 5);

    [Theory]
    [InlineData("packet")]
    [InlineData("drawings")]
    [InlineData("site")]
    [InlineData("takeoff")]
    [InlineData("reasons")]
    [InlineData("submittal")]
    public void APaperIsAPdfAndItsPagesAreTold(string paper)
    {
        using var folder = new CliFolder();
        var ran = folder.Run("papers", Sample("level-yard.json"), "--paper", paper, "--lang", "es", "--units", "metric", "--size", "a3", "--out", "@paper.pdf");

        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Matches(@"\d+ pages?, [\d,]+ bytes", ran.Error);
        Assert.Equal("%PDF-", Start(folder.Of("paper.pdf")));
        Assert.Equal("", ran.Output);
    }

    [Fact]
    public void ARevisionComparesTwoJobsAndACalculationWorksOneFigureOut()
    {
        using var folder = new CliFolder();
        Assert.Equal(ExitCode.Fine, folder.Run("papers", Sample("corner-lot.json"), "--paper", "revision", "--against", Sample("level-yard.json"), "--out", "@r.pdf").Exit);
        Assert.Equal(ExitCode.Fine, folder.Run("papers", Sample("corner-lot.json"), "--paper", "calculation", "--fact", "post/lot/1/hole-depth", "--out", "@c.pdf").Exit);
        Assert.Equal(["c.pdf", "r.pdf"], folder.Names);
        var unknown = folder.Run("papers", Sample("corner-lot.json"), "--paper", "calculation", "--fact", "post/lot/9999/hole-depth", "--out", "@x.pdf");
        Assert.Equal(ExitCode.Problems, unknown.Exit);
        Assert.Contains("'tautline why FILE --list'", unknown.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSitePlanIsADrawingFileAndTablesASpreadsheet()
    {
        using var folder = new CliFolder();
        foreach (var (paper, file) in new[] { ("site", "site.dxf"), ("site", "site.svg"), ("tables", "tables.xlsx") })
            Assert.Equal(ExitCode.Fine, folder.Run("papers", Sample("corner-lot.json"), "--paper", paper, "--out", "@" + file).Exit);

        Assert.Contains("AC1015", File.ReadAllText(folder.Of("site.dxf")), StringComparison.Ordinal);
        Assert.StartsWith("<?xml", File.ReadAllText(folder.Of("site.svg")), StringComparison.Ordinal);
        Assert.StartsWith("PK", Start(folder.Of("tables.xlsx")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("packet", "paper.docx", "the paper 'packet' cannot be written as '.docx'", "Let the name end in .pdf.")]
    [InlineData("tables", "paper.csv", "the paper 'tables' cannot be written as '.csv'", "Let the name end in .xlsx.")]
    [InlineData("revision", "paper.pdf", "A revision compares two jobs", "--against FILE")]
    [InlineData("calculation", "paper.pdf", "A calculation needs the figure", "--fact FACT")]
    [InlineData("packets", "paper.pdf", "--paper cannot be 'packets'", "packet, drawings, site")]
    public void WhatDoesNotGoTogetherIsToldBeforeAnyWork(string paper, string file, string message, string hint)
    {
        using var folder = new CliFolder();
        var ran = folder.Run("papers", Sample("level-yard.json"), "--paper", paper, "--out", "@" + file);

        Assert.Equal(ExitCode.Usage, ran.Exit);
        Assert.Contains(message, ran.Error, StringComparison.Ordinal);
        Assert.Contains(hint, ran.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Names);
    }

    [Fact]
    public void AJobWithErrorsOrWithoutALineHasNoPaperAndSaysWhy()
    {
        using var folder = new CliFolder(File.ReadAllText(Sample("level-yard.json")).Replace("\"opening\": 1.2192", "\"opening\": 90", StringComparison.Ordinal));
        var ran = folder.Run("papers", "@job.json", "--out", "@paper.pdf");

        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.Contains("error: ", ran.Error, StringComparison.Ordinal);
        folder.Put("bare.json", "{\"format\":\"tautline-job\",\"version\":1,\"id\":\"bare\",\"name\":\"Bare\"}");
        Assert.Equal(ExitCode.Problems, folder.Run("papers", "@bare.json", "--out", "@paper.pdf").Exit);
        Assert.Equal(["bare.json", "job.json"], folder.Names);
    }

    [Fact]
    public void AStandingFileIsKeptAndACancelledPaperLeavesNothing()
    {
        using var folder = new CliFolder().Put("paper.pdf", "mine");
        Assert.Equal(ExitCode.Usage, folder.Run("papers", Sample("level-yard.json"), "--out", "@paper.pdf").Exit);
        Assert.Equal("mine", File.ReadAllText(folder.Of("paper.pdf")));
        Assert.Equal(ExitCode.Cancelled, folder.Run(new CancellationToken(true), "papers", Sample("level-yard.json"), "--out", "@other.pdf").Exit);
        Assert.Equal(["paper.pdf"], folder.Names);
    }
}
