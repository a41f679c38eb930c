using Tautline.Cli.Terminal;
using Tautline.Engine.Problems;
using Tautline.Formats.Import;

namespace Tautline.Cli.Input;

/// <summary>What a reader of an outside file found, as this program tells it.</summary>
internal static class ImportFindings
{
    public static Finding Describe(ImportProblem problem) => new(
        problem.Severity switch
        {
            ProblemSeverity.Error => Severity.Error,
            ProblemSeverity.Warning => Severity.Warning,
            _ => Severity.Note,
        },
        problem.Code, problem.Where.ToString(), problem.Message, problem.Hint);
}
