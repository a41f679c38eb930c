using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Input;

/// <summary>A job from whichever kind of file, with what its reader had to say.</summary>
/// <param name="Path">The file as the user named it.</param>
/// <param name="Json">The text, where the file is a job file: problems are then placed by line and column.</param>
/// <param name="Job">Nothing where the file holds none.</param>
/// <param name="Exit">Why there is no job to plan; fine where there is one.</param>
internal sealed record LoadedJob(string Path, ReadOnlyMemory<byte> Json, Job? Job, IReadOnlyList<Finding> Findings, ExitCode Exit)
{
    public static LoadedJob Unreadable(string path, Finding finding) => new(path, default, null, [finding], ExitCode.Unreadable);

    public static LoadedJob Of(string path, ReadOnlyMemory<byte> json, Job? job, IReadOnlyList<Finding> findings)
        => new(path, json, job, findings, job is null || findings.Any(f => f.Severity == Severity.Error) ? ExitCode.Problems : ExitCode.Fine);

    /// <summary>A problem in words, at its place in the file.</summary>
    public Finding Describe(Problem problem, UnitSystem units) => new(
        problem.Severity, problem.Code.ToString(), ProblemPlaces.Where(this, problem.Place, units), ProblemText.Message(problem, units),
        ProblemText.Hint(problem, units));
}
