using Tautline.Engine.Jobs;

namespace Tautline.Engine.Catalog;

/// <summary>The rule sets this build carries: the base set, and those of agencies that overrule parts of it.</summary>
public static class RuleSets
{
    public const string BaseName = "base";

    private static readonly Lazy<Rules> @base = new(() => Rules.Read(Resource.Text("rules-base.json")));

    /// <summary>The base set first.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [BaseName, "caltrans", "faa", "missouri-dot", "navy", "ohio-dot", "tremonton", "usace"];

    public static Rules Base => @base.Value;

    /// <summary>A set by its name, or nothing.</summary>
    public static Rules? Find(string name)
        => name == BaseName ? Base : Names.Contains(name) ? Rules.Read(Resource.Text($"rules-{name}.json")) : null;

    /// <summary>The set a job names; the base set where that is none of these, which the plan then tells.</summary>
    public static Rules For(Job job) => Find(job.RuleSet) ?? Base;
}
