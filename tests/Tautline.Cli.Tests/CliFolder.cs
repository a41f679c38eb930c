using Tautline.Cli.Terminal;

namespace Tautline.Cli.Tests;

/// <summary>What a run left behind: its exit code and both streams, with the folder's own path taken out.</summary>
internal sealed record Ran(ExitCode Exit, string Output, string Error);

/// <summary>A folder of its own for one test, in which the program is run with its streams caught.</summary>
internal sealed class CliFolder : IDisposable
{
    private readonly string path = Directory.CreateTempSubdirectory("tautline-cli-").FullName;

    public CliFolder(string? job = null)
    {
        if (job is not null) Put("job.json", job);
    }

    /// <summary>What the program takes for the machine's clock and zone.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    public string Of(string name) => Path.Combine(path, name);

    public CliFolder Put(string name, string text)
    {
        File.WriteAllText(Of(name), text);
        return this;
    }

    public CliFolder Put(string name, byte[] bytes)
    {
        File.WriteAllBytes(Of(name), bytes);
        return this;
    }

    public IReadOnlyList<string> Names => [.. Directory.EnumerateFileSystemEntries(path).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal)];

    /// <summary>Runs a command; names of files in the folder are given as @name.</summary>
    public Ran Run(params string[] args) => Run(default, args);

    public Ran Run(CancellationToken cancelled, params string[] args)
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        var host = new CliHost(output, error, false, false, false, CliHost.PlainWidth, cancelled) { Clock = Clock };
        var exit = CliApp.Run([.. args.Select(a => a.StartsWith('@') ? Of(a[1..]) : a)], host);
        return new(exit, Bare(output), Bare(error));
    }

    public string Bare(object text) => text.ToString()!.Replace(path + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);

    public void Dispose() => Directory.Delete(path, recursive: true);
}
