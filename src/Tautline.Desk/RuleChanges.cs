using System.Globalization;
using Tautline.Documents.Words;
using Tautline.Engine.Catalog;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>What is done to the rules of a job: the set it starts from, and limits of its own.</summary>
public static class RuleChanges
{
    public static Task SetAsync(Session session, string? name) => name is null || RuleSets.Find(name) is null ? Task.CompletedTask : session.Apply(job =>
        new EditOutcome(job with { RuleSet = name }, new(EditKind.Other, name), []));

    /// <summary>A limit 'as specified', in the unit people write it in; empty gives it back to the rule set.</summary>
    public static Task<string> Limit(Session session, RuleKey rule, string text, Phrases say)
    {
        if (text.Trim().Length == 0) return Written.EditAsync(session, job => Without(job, rule.Key));
        if (Value(rule, text.Trim(), session.Job.Units) is not { } value) return Task.FromResult(say.Say("rules.wrong", ("unit", say["rules.unit." + rule.Measure.ToString().ToLowerInvariant()])));
        return rule.Allows(value)
            ? Written.EditAsync(session, job => With(job, rule.Key, value))
            : Task.FromResult(say["rules.notAllowed"]);
    }

    private static double? Value(RuleKey rule, string text, UnitSystem units) => rule.Measure switch
    {
        RuleUnit.Length => LengthText.Parse(text, units == UnitSystem.Metric ? LengthUnit.Metre : LengthUnit.Foot) is { Ok: true } length ? length.Value.Metres : null,
        RuleUnit.Slope => SlopeText.Parse(text) is { Ok: true } slope ? slope.Value.Ratio : null,
        RuleUnit.YesNo => text.ToUpperInvariant() switch { "YES" or "SI" or "SÍ" => 1, "NO" => 0, _ => null },
        RuleUnit.Volume => Volume(text),
        _ => Number(text.Replace("deg", "", StringComparison.Ordinal).Replace("days", "", StringComparison.Ordinal)),
    };

    /// <summary>Cubic feet, or cubic metres where the text says m3.</summary>
    private static double? Volume(string text) => text.EndsWith("m3", StringComparison.Ordinal) ? Number(text[..^2])
        : Number(text.Replace("cu ft", "", StringComparison.Ordinal)) is { } feet ? Engine.Quantities.Volume.FromCubicFeet(feet).CubicMetres : null;

    private static double? Number(string text) => double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : null;

    private static EditOutcome With(Job job, string key, double value)
    {
        RuleOverride own = (job.AsSpecified.FirstOrDefault(o => o.Rule == key) ?? new RuleOverride { Rule = key, Value = value }) with { Value = value };
        return new(job with { AsSpecified = [.. job.AsSpecified.Where(o => o.Rule != key), own] }, new(EditKind.Other, key), []);
    }

    private static EditOutcome Without(Job job, string key) =>
        job.AsSpecified.All(o => o.Rule != key) ? new(job, default, []) : new(job with { AsSpecified = [.. job.AsSpecified.Where(o => o.Rule != key)] }, new(EditKind.Other, key), []);
}
