using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Plan;
using Tautline.Cli.Terminal;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Folder;

/// <summary>Plans every job of a folder, goes on over bad ones, and sums up.</summary>
/// <param name="plan">Plans one job.</param>
internal sealed class FolderRun(PlanOptions options, CliHost host, Func<PlanningOptions, CliHost, Planned> plan)
{
    private readonly FolderOutputs outputs = FolderOutputs.Of(options);
    private readonly List<FolderJob> done = [];

    public static ExitCode Run(PlanOptions options, CliHost host) => new FolderRun(options, host, Planning.Run).Run();

    /// <exception cref="OperationCanceledException">The user cancelled; what is written by then is whole.</exception>
    public ExitCode Run()
    {
        var folder = options.Planning.File;
        if (Misplaced() is { } message) return Refuse(ExitCode.Usage, new(Severity.Error, "", folder, message, "'tautline plan --help' shows what belongs here."));
        var (files, fault) = FolderFiles.List(folder);
        if (files is null) return Refuse(ExitCode.Unreadable, fault!);
        if (files.Jobs.Count == 0) return Refuse(ExitCode.Unreadable, Empty(folder, files.Others));
        if (RulesSource.Load(options.Planning.Rules, "base").Fault is { } wrong) return Refuse(ExitCode.Unreadable, wrong);
        if (outputs.Prepare(files.Jobs, host) is not ExitCode.Fine and var refused) return refused;
        PlanAll(files.Jobs);
        var summary = new FolderSummary(folder, done, files.Others, options.Planning.Units);
        new Target(null, false).Write(host, options.Format == PlanFormat.Json ? FolderJson.Write(summary) : FolderText.Write(summary, Paper.For(host)));
        return summary.Exit;
    }

    /// <summary>Flags that would do nothing are refused, so that nobody waits for what they promise.</summary>
    private string? Misplaced()
    {
        if (options.Planning.Outline != new OutlineChoices(null, null)) return "--spec and --crs are for an outline, and a folder's outlines are passed over.";
        if (options.Planning.Built is not null) return "--built is of one job, and a folder holds several.";
        if (options.Target.Path is not null) return null;
        return options.Format == PlanFormat.Csv || options.By is not null || options.All
            ? "--csv, --by and --all go with --out here: the screen shows the summary alone."
            : null;
    }

    private static Finding Empty(string folder, int others) => new(
        Severity.Error, "FolderEmpty", folder, others == 0 ? "The folder is empty." : $"There is no job among the {Messages.Count(others, "file")} of the folder.",
        "A job is a .tape book, or a .json file that says \"format\": \"tautline-job\". Folders within are not looked into.");

    private ExitCode Refuse(ExitCode exit, Finding finding)
    {
        Messages.Show(host, [finding]);
        return exit;
    }

    private void PlanAll(IReadOnlyList<string> jobs)
    {
        using var line = new ProgressLine(host);
        try
        {
            foreach (var job in jobs)
                done.Add(One(job, line, $"planning {done.Count + 1} of {jobs.Count}, {Path.GetFileName(job)}"));
        }
        catch (OperationCanceledException)
        {
            line.Clear();
            Messages.Note(host, $"Stopped after {done.Count} of {Messages.Count(jobs.Count, "job")}; {Messages.Count(done.Count(j => j.Written is not null), "plan")} written, each whole.");
            throw;
        }
    }

    /// <summary>Only the planning is left standing when the user cancels; a file, once begun, is written to its end.</summary>
    private FolderJob One(string path, ProgressLine line, string doing)
    {
        var (job, data) = Work.Run(line, doing, () => PlanOne(path));
        if (job.Exit != ExitCode.Fine)
        {
            line.Clear();
            Messages.Show(host, job.Findings.Where(f => f.Severity == Severity.Error));
        }
        if (data is null) return job;
        line.Clear();
        var target = outputs.For(path);
        var exit = target.Write(host, data);
        return exit == ExitCode.Fine ? job with { Written = target.Path } : job with { Exit = exit, Why = $"{job.Hash![..12]}, but it could not be written." };
    }

    private (FolderJob Job, byte[]? Data) PlanOne(string path)
    {
        try
        {
            var planned = plan(options.Planning with { File = path }, host with { ErrorIsTerminal = false });
            var job = FolderJob.Of(path, planned);
            return (job, job.Totals is null || outputs.Folder is null ? null : PlanRun.Data(planned, options, host));
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            Finding finding = new(Severity.Error, "Fault", path, $"A fault inside the program: {fault}", "This is not your doing. Keep the file: with it the fault can be found.");
            return (new FolderJob(Path.GetFileName(path), [finding], ExitCode.Fault) { Why = "A fault inside the program." }, null);
        }
    }
}
