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

    private static string BeforeProblems(string text) => text[..text.IndexOf("\nProblems\n", StringComparison.Ordinal)];

    private static async Task<Ran> Run(CliFolder folder, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "tautline.dll"), .. args])
        {
            WorkingDirectory = folder.Of("."),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync(new CancellationTokenSource(TimeSpan.FromSeconds(60)).Token);
        return new((ExitCode)process.ExitCode, await output, await error);
    }
}
