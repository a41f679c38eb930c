using System.Diagnostics;

namespace Tautline.Cli.Tests;

/// <summary>The built program itself, run as a person or a script would.</summary>
public sealed class BlackBoxTests
{
    [Fact]
    public async Task PlanWritesDataOnlyToTheOutput()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = await Run(folder, "plan", "job.json", "--csv", "posts");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Equal(folder.Run("plan", "@job.json", "--csv", "posts").Output, ran.Output);
        Assert.StartsWith("warning: job.json, take-off line 12: fence fabric", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RedirectedTextIsPlain()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = await Run(folder, "plan", "job.json");
        Assert.DoesNotContain('\u001b', ran.Output + ran.Error);
        Assert.Equal(BeforeProblems(folder.Run("plan", "@job.json").Output), BeforeProblems(ran.Output)); // problems wrap with the file's path
    }

    [Fact]
    public async Task TheExitCodeReachesTheShell()
    {
        using var folder = new CliFolder(Jobs.With("1.8288", "1.9"));
        Assert.Equal(ExitCode.Problems, (await Run(folder, "check", "job.json")).Exit);
        Assert.Equal(ExitCode.Unreadable, (await Run(folder, "check", "none.json")).Exit);
        Assert.Equal(ExitCode.Usage, (await Run(folder, "chekc")).Exit);
    }

    /// <summary>The machine's time zone and language change nothing in a plan.</summary>
    [Fact]
    public async Task TimeZoneAndLanguageOfTheMachineNeverMatter()
    {
        using var folder = new CliFolder(Jobs.Yard);
        HashSet<string> plans = [];
        foreach (var (zone, language) in new[] { ("UTC", "C"), ("Asia/Tokyo", "de_DE.UTF-8"), ("America/St_Johns", "tr_TR.UTF-8") })
            plans.Add((await Run(folder, [("TZ", zone), ("LC_ALL", language), ("LANG", language)], "plan", "job.json", "--json")).Output);
        Assert.Single(plans);
        Assert.Contains("\"takeoff\"", plans.Single(), StringComparison.Ordinal);
    }

    /// <summary>What was written in the field happened where the work is: with the zone and the day named, no machine matters.</summary>
    [Fact]
    public async Task WithAZoneAndADayAFieldFileReadsTheSameOnEveryMachine()
    {
        using var folder = new CliFolder();
        HashSet<string> shown = [];
        foreach (var (zone, language) in new[] { ("UTC", "C"), ("Asia/Tokyo", "de_DE.UTF-8"), ("America/St_Johns", "tr_TR.UTF-8") })
            shown.Add((await Run(folder, [("TZ", zone), ("LC_ALL", language), ("LANG", language)], "field", "show", Samples.Field, "--entries", "--zone", "-06:00", "--today", "2026-10-13")).Output);
        Assert.Contains("2026-10-12 06:50", shown.Single(), StringComparison.Ordinal);
    }

    /// <summary>Times in the log order its entries and are no local times: what stands is the same everywhere.</summary>
    [Fact]
    public async Task ThePlanThroughWhatStandsIsTheSameOnEveryMachine()
    {
        using var folder = new CliFolder();
        folder.Run("field", "job", Samples.Field, "-o", "@job.json");
        HashSet<string> stakes = [];
        foreach (var (zone, language) in new[] { ("UTC", "C"), ("Asia/Tokyo", "de_DE.UTF-8"), ("America/St_Johns", "tr_TR.UTF-8") })
            stakes.Add((await Run(folder, [("TZ", zone), ("LC_ALL", language), ("LANG", language)], "stakes", "job.json", "--built", Samples.Field)).Output);
        Assert.Contains("\nA4,28.607,0,", stakes.Single(), StringComparison.Ordinal);
    }

    private static string BeforeProblems(string text) => text[..text.IndexOf("\nProblems\n", StringComparison.Ordinal)];

    private static Task<Ran> Run(CliFolder folder, params string[] args) => Run(folder, [], args);

    private static async Task<Ran> Run(CliFolder folder, (string Name, string Value)[] environment, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "tautline.dll"), .. args])
        {
            WorkingDirectory = folder.Of("."),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment) start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync(new CancellationTokenSource(TimeSpan.FromSeconds(60)).Token);
        return new((ExitCode)process.ExitCode, await output, await error);
    }
}
