using System.CommandLine;
using Tautline.Cli.Output;
using Tautline.Cli.Papers;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Field;

/// <summary>What comes back from the phones: looked at, put together, planned, printed.</summary>
internal static class FieldCommand
{
    public static Command Define(CliHost host) => new("field", "What the phones hand over: shows it, merges it, takes the job, the as-built paper and the photos out of it.")
    {
        Show(host), Merge(host), Job(host), AsBuilt(host), Photos(host),
    };

    private static Argument<string> File() => new("FILE") { Description = "What a phone handed over: an exchange file (.json), or a ZIP of it with photos." };

    private static Option<string> Out(string description) => new("--out", "-o") { Description = description, HelpName = "FILE", Required = true };

    private static Option<bool> Force() => new("--force") { Description = "Let --out replace a file." };

    private static Command Show(CliHost host)
    {
        var (file, zone, day, units) = (File(), FieldClock.ZoneOption(), FieldClock.DayOption(), Flags.Units());
        var entries = new Option<bool>("--entries") { Description = "Also every entry of the log, those too that were taken back." };
        var json = Flags.Json("The same as JSON: metres, cents, milliseconds since 1970.");
        var command = new Command("show", "Shows what a field file holds: work by run, hours, locate tickets, changes, checks, conflicts, devices.") { file, entries, day, zone, units, json };
        command.SetAction(p => (int)FieldShowRun.Run(
            new(p.GetRequiredValue(file), p.GetValue(entries), p.GetValue(day), p.GetValue(zone), p.GetValue(units), p.GetValue(json)), host));
        return command;
    }

    private static Command Merge(CliHost host)
    {
        var files = new Argument<string[]>("FILES") { Description = "Two or more field files of one job, each an exchange file (.json) or a ZIP.", Arity = ArgumentArity.OneOrMore };
        var (output, force) = (Out("The merged file; with the photos where its name ends in .zip."), Force());
        var command = new Command("merge", "Merges field files of one job. The order does not matter, and the same file ten times is the file once.") { files, output, force };
        command.Validators.Add(r =>
        {
            if (r.GetResult(files)?.Tokens.Count == 1) r.AddError("Only one file is named: name two or more to merge.");
        });
        command.SetAction(p => (int)FieldMergeRun.Run(new(p.GetRequiredValue(files), new Target(p.GetValue(output), p.GetValue(force))), host));
        return command;
    }

    private static Command Job(CliHost host)
    {
        var (file, output, force) = (File(), Out("The job file (.json)."), Force());
        var command = new Command("job", "Writes the job as all edits made it, for 'plan', 'papers' and the other commands; with --built they go through what stands. Where a conflict is open, what stands meanwhile.") { file, output, force };
        command.SetAction(p => (int)FieldJobRun.Run(new(p.GetRequiredValue(file), new Target(p.GetValue(output), p.GetValue(force))), host));
        return command;
    }

    private static Command AsBuilt(CliHost host)
    {
        var (file, output, force, language, units, size, zone) = (File(), Out("The file (.pdf)."), Force(), PaperFlags.Language(), Flags.Units(), PaperFlags.Size(), FieldClock.ZoneOption());
        var command = new Command("as-built", "Prints what stands beside what was drawn, by the crew's own log. It is no survey.") { file, output, language, units, size, zone, force };
        command.SetAction(p => (int)FieldAsBuiltRun.Run(
            new(p.GetRequiredValue(file), p.GetValue(language)!, p.GetValue(units), p.GetValue(size), p.GetValue(zone), new Target(p.GetValue(output), p.GetValue(force))), host));
        return command;
    }

    private static Command Photos(CliHost host)
    {
        var (file, zone) = (File(), FieldClock.ZoneOption());
        var output = new Option<string>("--out", "-o") { Description = "The folder; made where it is not there. Nothing in it is replaced.", HelpName = "DIR", Required = true };
        var command = new Command("photos", "Writes the photos of a ZIP into a folder, each named by its date, place and words, and checked by its digest.") { file, output, zone };
        command.SetAction(p => (int)FieldPhotosRun.Run(new(p.GetRequiredValue(file), p.GetValue(output)!, p.GetValue(zone)), host));
        return command;
    }
}
