using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Site.Ground;
using Tautline.Engine.Site.Snapshot;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Import;

namespace Tautline.Cli.Attach;

internal static class AttachRun
{
    /// <summary>A smaller file is read whole: then it can be told where its ground lies.</summary>
    private const long Large = 20_000_000;

    public static ExitCode Run(AttachOptions options, GroundFlags flags, CliHost host)
    {
        if (options.Target.Check(host) is not ExitCode.Fine and var refused) return refused;
        var loaded = Work.Run(host, "reading the job", () => JobSource.Load(options.File, options.Outline, options.Units));
        Messages.Show(host, loaded.Findings);
        if (loaded.Exit != ExitCode.Fine) return loaded.Exit;
        if (Read(options, Window(loaded.Job!, options), host) is not { } file) return ExitCode.Unreadable;
        Messages.Show(host, [.. file.Problems.Select(ImportFindings.Describe)]);
        if (file.HasErrors) return ExitCode.Problems;
        return file.Questions.IsEmpty ? Lay(loaded.Job!, file, options, host) : Ask(file, flags, host);
    }

    /// <summary>The part of a grid near the lines, so that a large one need not be held whole; all of it where it is small or its system not stated.</summary>
    private static GroundExtent? Window(Job job, AttachOptions options)
    {
        if (!File.Exists(options.Ground) || new FileInfo(options.Ground).Length < Large) return null;
        var vertices = job.Lines.SelectMany(l => l.Vertices).ToList();
        if (options.Answers.System is not { } system || GroundTarget.Of(job.Coordinates) is not { } target || vertices.Count == 0) return null;
        var lines = new GroundExtent(
            vertices.Min(v => v.East.Metres), vertices.Min(v => v.North.Metres), vertices.Max(v => v.East.Metres), vertices.Max(v => v.North.Metres));
        // An arc may bulge out of its corners by no more than they are apart.
        return GroundPlacement.WindowFor(system, target, lines, options.Width.Metres + lines.Size + 100);
    }

    private static GroundFile? Read(AttachOptions options, GroundExtent? window, CliHost host)
    {
        try
        {
            using var stream = new FileStream(options.Ground, FileMode.Open, FileAccess.Read, FileShare.Read);
            return Work.Run(host, "reading the ground", () => GroundReader.Read(stream, options.Answers with { Window = window }));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Messages.Error(host, $"{options.Ground}: The file cannot be read: {e.Message}", "Check its name and who may read it.");
            return null;
        }
    }

    private static ExitCode Ask(GroundFile file, GroundFlags flags, CliHost host)
    {
        foreach (var question in file.Questions)
        {
            var choices = string.Join("", question.Choices.Select(c => $"\n      {c.Value}  {c.Text}{(c.Proposed ? " (likely)" : "")}"));
            Messages.Error(host, $"{file.SourceName}: {question.Text}{choices}", $"Answer with {flags.Of(question.Kind)}.");
        }
        return ExitCode.Problems;
    }

    private static ExitCode Lay(Job job, GroundFile file, AttachOptions options, CliHost host)
    {
        if (GroundTarget.Of(job.Coordinates) is not { } target)
        {
            Messages.Error(host, $"{options.File}: The job's coordinates are '{job.Coordinates!.System}', which is not known.", "Name a system as EPSG:n.");
            return ExitCode.Problems;
        }
        var placed = Work.Run(host, "laying the ground", () => GroundPlacement.Place(file, target));
        Messages.Show(host, [.. placed.Problems.Select(ImportFindings.Describe)]);
        if (placed.Surface is not { } surface) return ExitCode.Problems;
        var kept = Work.Run(host, "cutting the ground along the lines", () => Cut(surface, job, file, options));
        if (kept is null)
        {
            Messages.Error(host, $"{file.SourceName}: None of the ground lies within {options.Width.Metres:0.#} m of a line.", "Check the coordinates of both, and the unit of the file's.");
            return ExitCode.Problems;
        }
        foreach (var line in job.Lines.Where(KeepsItsOwn))
            Messages.Note(host, $"The line '{line.Id.Value}' keeps its own ground, {(line.Ground!.From == LineGround.FromGrades ? "the grades of its legs" : "its shots")}.", "Take its \"ground\" out of the job, or say \"from\": \"surface\" there, to use what was attached.");
        host.Error.Write($"{Words(kept)} kept within {options.Width.Metres:0.#} m of the lines.\n");
        return options.Target.Write(host, JobFile.Write(job with { Ground = kept }));
    }

    private static bool KeepsItsOwn(Line line)
        => line.Ground is { } ground && (ground.From is LineGround.FromGrades or LineGround.FromShots || (ground.From is null && ground.Shots.Count > 0));

    private static GroundSnapshot? Cut(IGroundSurface surface, Job job, GroundFile file, AttachOptions options)
    {
        var source = new GroundSource
        {
            File = Path.GetFileName(file.SourceName),
            Sha256 = file.Sha256,
            System = file.System is { EpsgCode: { } code } ? $"EPSG:{code}" : null,
            HeightUnit = file.HeightUnit?.Name(),
        };
        return SnapshotCutter.Cut(surface, job, options.Width, source);
    }

    private static string Words(GroundSnapshot kept)
        => kept.Grid is { } grid ? $"{grid.Parts.Sum(p => p.Heights.Count)} heights" : $"{kept.Faces.Count / 3} triangles";
}
