using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;

namespace Tautline.Cli.Field;

internal sealed record FieldJobOptions(string File, Target Target);

internal static class FieldJobRun
{
    public static ExitCode Run(FieldJobOptions options, CliHost host)
    {
        if (options.Target.Check(host) is not ExitCode.Fine and var refused) return refused;
        var reading = Work.Run(host, "reading", () => FieldSource.Read(options.File));
        Messages.Show(host, reading.Findings);
        if (reading.File is not { } file) return reading.Exit;
        var state = FieldState.Of(file, null, host);
        Messages.Show(host, Messages.Ordered(state.Findings));
        // A job whose plan has errors is written all the same: mending it is what it may be wanted for.
        if (state.Job is not { } job || file.Exchange.Shared.Head.HasErrors) return ExitCode.Problems;
        var written = options.Target.Write(host, JobFile.Write(job));
        if (written != ExitCode.Fine) return written;
        Tell(options, file, state, host);
        return reading.Exit > state.Exit ? reading.Exit : state.Exit;
    }

    private static void Tell(FieldJobOptions options, FieldFile file, FieldState state, CliHost host)
    {
        var shared = file.Exchange.Shared;
        if (shared.Conflicts.Count > 0)
            Messages.Note(host, "Open conflicts are not settled here: the job has what stands meanwhile, the same on every device that knows the same edits.");
        Messages.Show(host, FieldConflicts.Told(shared, new FieldWords(state.Units, new FieldClock(host.Clock.LocalTimeZone))));
        if (state.Built is { Posts.Count: > 0 })
            Messages.Note(
                host, "This is the job as drawn and edited: what is built is not in a job.",
                $"'tautline plan {options.Target.Path} --built {options.File}' plans through it; the other commands that plan take --built too.");
    }
}
