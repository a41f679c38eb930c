using Tautline.Engine.Quantities;

namespace Tautline.Cli.Cards;

/// <param name="Post">The mark of the terminal.</param>
/// <param name="Toward">The mark of the terminal at the other end of the run meant; nothing for all runs at the post.</param>
internal sealed record CardOptions(PlanningOptions Planning, string Post, string? Toward, Length? Top, Length? Bottom);
