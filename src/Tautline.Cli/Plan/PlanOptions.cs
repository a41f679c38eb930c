using Tautline.Cli.Output;

namespace Tautline.Cli.Plan;

internal enum PlanFormat { Text, Json, Csv }

/// <param name="By">How far net quantities are split by place; nothing where they are not asked for.</param>
/// <param name="All">Every post and run, however many there are.</param>
internal sealed record PlanOptions(PlanningOptions Planning, PlanFormat Format, CsvTable Table, QuantitiesBy? By, bool All, Target Target);
