using Tautline.Cli.Output;

namespace Tautline.Cli.Plan;

internal enum PlanFormat { Text, Json, Csv }

internal enum CsvTable { Takeoff, Posts, Runs }

/// <param name="All">Every post and run, however many there are.</param>
internal sealed record PlanOptions(PlanningOptions Planning, PlanFormat Format, CsvTable Table, bool All, Target Target);
