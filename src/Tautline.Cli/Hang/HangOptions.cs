using Tautline.Cli.Output;

namespace Tautline.Cli.Hang;

internal sealed record HangOptions(PlanningOptions Planning, Target Target);
