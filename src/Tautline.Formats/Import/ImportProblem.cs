namespace Tautline.Formats.Import;

/// <summary>One thing a reader has to say about a file.</summary>
/// <param name="Severity">Whether it stops something.</param>
/// <param name="Code">A fixed word for the kind of problem; see the reader's list of codes.</param>
/// <param name="Where">The place in the file.</param>
/// <param name="Message">What was found.</param>
/// <param name="Hint">What would be right or what to do; empty when there is nothing to do.</param>
public sealed record ImportProblem(ProblemSeverity Severity, string Code, ProblemPlace Where, string Message, string Hint);
