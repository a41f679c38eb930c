using Tautline.Cli.Output;

namespace Tautline.Cli.Stakes;

/// <param name="Header">Whether the columns are named in a first row.</param>
internal sealed record StakesOptions(PlanningOptions Planning, bool Header, Target Target);
