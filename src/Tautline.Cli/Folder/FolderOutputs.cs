using Tautline.Cli.Output;
using Tautline.Cli.Plan;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Folder;

/// <summary>Where the plans of a folder's jobs go: each into a file of its own, named after the job's.</summary>
/// <param name="Folder">Nothing where only the summary is asked for.</param>
/// <param name="Force">Replace files that exist; never a job.</param>
/// <param name="Ending">What follows the name of the job's file.</param>
internal sealed record FolderOutputs(string? Folder, bool Force, string Ending)
{
    public static FolderOutputs Of(PlanOptions options) => new(options.Target.Path, options.Target.Force, options switch
    {
        { Format: PlanFormat.Csv } => $".{options.Table.ToString().ToLowerInvariant()}.csv",
        { Format: PlanFormat.Json, By: not null } => ".quantities.json",
        { Format: PlanFormat.Json } => ".plan.json",
        _ => ".plan.txt",
    });

    /// <summary>The whole name stays: yard.json and yard.tape may lie in one folder.</summary>
    public Target For(string job) => new(Folder is null ? null : Path.Combine(Folder, Path.GetFileName(job) + Ending), Force);

    /// <summary>Told before any work, and the folder made.</summary>
    public ExitCode Prepare(IReadOnlyList<string> jobs, CliHost host)
    {
        if (Folder is null) return ExitCode.Fine;
        var names = jobs.Select(j => Path.GetFileName(j)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var targets = jobs.Select(j => For(j).Path!).ToList();
        if (targets.FirstOrDefault(t => names.Contains(Path.GetFileName(t))) is { } job)
            return Refuse(host, $"{job}: A job has this name, and a job is never written over.", "Rename the job.");
        var there = Force ? [] : targets.Where(File.Exists).ToList();
        if (there.Count > 0)
            return Refuse(host, $"{there[0]}: The file exists already{(there.Count > 1 ? $", and {there.Count - 1} more" : "")}.", "Give --force to replace, or another folder.");
        return Make(host);
    }

    private static ExitCode Refuse(CliHost host, string message, string hint)
    {
        Messages.Error(host, message, hint);
        return ExitCode.Usage;
    }

    private ExitCode Make(CliHost host)
    {
        try
        {
            Directory.CreateDirectory(Folder!);
            return ExitCode.Fine;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Messages.Error(host, $"{Folder}: The folder cannot be made: {e.Message}", "--out names a folder here: the plan of each job is a file in it.");
            return ExitCode.Unreadable;
        }
    }
}
