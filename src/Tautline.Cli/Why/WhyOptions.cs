namespace Tautline.Cli.Why;

/// <param name="Fact">The fact's name; nothing where they are to be listed.</param>
internal sealed record WhyOptions(PlanningOptions Planning, string? Fact);
