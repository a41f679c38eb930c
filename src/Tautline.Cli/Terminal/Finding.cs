using Tautline.Engine.Problems;

namespace Tautline.Cli.Terminal;

/// <summary>A problem of any reader or of the plan, in words, with the place in its file.</summary>
internal sealed record Finding(Severity Severity, string Code, string Where, string Message, string Hint);
