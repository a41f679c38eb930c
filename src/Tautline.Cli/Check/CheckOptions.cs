namespace Tautline.Cli.Check;

internal sealed record CheckOptions(PlanningOptions Planning, bool Json);
