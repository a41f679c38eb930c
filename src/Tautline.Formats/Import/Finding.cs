namespace Tautline.Formats.Import;

/// <summary>A problem before it has a place: the texts stand together in one file per format.</summary>
internal readonly record struct Finding(ProblemSeverity Severity, string Code, string Message, string Hint = "");
