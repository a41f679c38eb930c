using System.Text.Json;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Catalog;

/// <summary>Reads the limits of a rule file and refuses what no rule set may say.</summary>
internal static class RulesReader
{
    /// <exception cref="JsonException">The text is no rule set; the message names the line.</exception>
    /// <exception cref="InvalidDataException">The message says what is missing or wrong.</exception>
    public static RuleSetFile File(ReadOnlySpan<byte> json)
    {
        var file = JsonSerializer.Deserialize(json, CatalogJson.Default.RuleSetFile)!;
        if (string.IsNullOrEmpty(file.Name)) throw new InvalidDataException("the rule set has no 'name'");
        if (file.Name == file.Extends) throw new InvalidDataException($"a set that extends '{file.Extends}' needs a name of its own");
        return file;
    }

    /// <summary>The set a file extends, or nothing.</summary>
    public static Rules? Below(RuleSetFile file)
        => file.Extends is not { } below ? null
            : RuleSets.Find(below)
              ?? throw new InvalidDataException($"'{file.Name}' extends '{below}', which is not known; known are: {string.Join(", ", RuleSets.Names)}");

    /// <summary>The limits a file states itself, the steps of each in order.</summary>
    public static IEnumerable<IReadOnlyList<Limit>> Limits(RuleSetFile file)
        => (file.Rules ?? []).Select(r => Limit(r, file)).GroupBy(l => l.Key).Select(g => Steps([.. g]));

    private static List<Limit> Steps(List<Limit> limits)
    {
        limits.Sort((a, b) => (a.Step?.UpTo ?? double.MaxValue).CompareTo(b.Step?.UpTo ?? double.MaxValue));
        foreach (var (a, b) in limits.Zip(limits.Skip(1)))
            if (a.Step?.UpTo == b.Step?.UpTo) throw new InvalidDataException($"rule '{a.Key}' is stated twice");
        return limits;
    }

    private static Limit Limit(RuleFile row, RuleSetFile file)
    {
        var rule = RuleKeys.Find(row.Key ?? "") ?? throw new InvalidDataException($"rule '{row.Key}' is not known");
        var value = Si(row.Value, row.Unit, rule.Measure) ?? throw new InvalidDataException($"rule '{rule.Key}' cannot have the unit '{row.Unit}'");
        if (!rule.Allows(value)) throw new InvalidDataException($"rule '{rule.Key}' cannot be {row.Value} {row.Unit}");
        return new Limit(
            rule, value, row.Condition ?? "", Sources.From(file.Sources, row.Source, row.Clause ?? "", row.Confidence), file.Name,
            StepOf(row, rule));
    }

    private static Step? StepOf(RuleFile row, RuleKey rule)
    {
        if (rule.SteppedBy is null)
            return row.UpTo is null ? null : throw new InvalidDataException($"rule '{rule.Key}' has one value and takes no 'upTo'");
        if (row.UpTo is not { } end) return new Step(null, true);
        var metres = Si(end, row.UpToUnit ?? "", RuleUnit.Length) ?? throw new InvalidDataException($"'upTo' of rule '{rule.Key}' needs 'upToUnit': in, ft, mm or m");
        return new Step(metres, !row.EndExcluded);
    }

    private static double? Si(double value, string unit, RuleUnit measure) => (measure, unit) switch
    {
        (RuleUnit.Length, "in") => Length.FromInches(value).Metres,
        (RuleUnit.Length, "ft") => Length.FromFeet(value).Metres,
        (RuleUnit.Length, "mm") => Length.FromMillimetres(value).Metres,
        (RuleUnit.Length, "m") => value,
        (RuleUnit.Volume, "ft3") => Volume.FromCubicFeet(value).CubicMetres,
        (RuleUnit.Slope, "%") => value / 100,
        (RuleUnit.Angle, "deg") or (RuleUnit.Days, "days") or (RuleUnit.Number or RuleUnit.Count or RuleUnit.YesNo, "") => value,
        _ => null,
    };
}
