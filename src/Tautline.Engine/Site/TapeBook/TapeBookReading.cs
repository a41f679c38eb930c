using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>What came of reading a tape book.</summary>
/// <param name="Job">The job; null while an error stands: there is never half a job.</param>
/// <param name="Problems">Everything a person should know, in the order of the book.</param>
public sealed record TapeBookReading(Job? Job, IReadOnlyList<TapeProblem> Problems)
{
    public bool HasErrors => Problems.Any(p => p.Severity == Severity.Error);
}

/// <summary>Something to know about one place of a tape book. Lines and columns count from 1, columns in UTF-16 units.</summary>
/// <param name="Code">Stable name of the kind of problem, such as 'unit-missing'.</param>
/// <param name="Message">What was found.</param>
/// <param name="Hint">What would be right.</param>
public sealed record TapeProblem(Severity Severity, string Code, int Line, int Column, string Message, string Hint)
{
    public override string ToString() => $"{Line}:{Column} {Code}: {Message} {Hint}";
}
