using Tautline.Cli.Output;

namespace Tautline.Cli.Profile;

internal sealed record ProfileOptions(PlanningOptions Planning, bool Csv, Target Target);
