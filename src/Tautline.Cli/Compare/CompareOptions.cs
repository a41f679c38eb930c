namespace Tautline.Cli.Compare;

/// <param name="Planning">The file; its rules choice is the set given by --rules, if any.</param>
/// <param name="Sets">Built-in sets by name, one or two.</param>
internal sealed record CompareOptions(PlanningOptions Planning, IReadOnlyList<string> Sets, bool Json);
