using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;

namespace Tautline.Cli;

/// <summary>The flags that several commands share; each is defined once, for parser and help.</summary>
internal static class Flags
{
    public static Argument<string> File(string description = "A job (.json), a tape book (.tape, .txt) or an outline (.geojson).")
        => new("FILE") { Description = description };

    /// <summary>The two ways to name a rule set; a command takes one of them.</summary>
    public static RulesFlags Rules() => new(
        new("--rules") { Description = "A rule set from a file to plan by, instead of the job's own.", HelpName = "FILE" },
        new("--rule-set")
        {
            Description = $"A built-in rule set to plan by, instead of the job's own: {Known}.",
            HelpName = "NAME",
            CustomParser = ReadRuleSet,
        });

    public static Option<string[]> RuleSets() => new("--rule-set")
    {
        Description = $"A built-in rule set: {Known}. Give it twice; once, and the job's own set or --rules is the first.",
        HelpName = "NAME",
        Arity = ArgumentArity.OneOrMore,
        CustomParser = r => [.. r.Tokens.Select(t => Checked(t.Value, r))],
    };

    private static string Known => string.Join(", ", Engine.Catalog.RuleSets.Names);

    private static string? ReadRuleSet(ArgumentResult result) => Checked(result.Tokens[0].Value, result);

    private static string Checked(string name, ArgumentResult result)
    {
        if (!Engine.Catalog.RuleSets.Names.Contains(name)) result.AddError($"--rule-set cannot be '{name}': known are {Known}.");
        return name;
    }

    public static Option<bool> Json(string description) => new("--json") { Description = description };

    public static Option<UnitSystem?> Units() => new("--units")
    {
        Description = "us or metric; otherwise as the job says.",
        HelpName = "us|metric",
        CustomParser = ReadUnits,
    };

    /// <summary>A length read off a tape on site; inches where the number says no unit.</summary>
    public static Option<Length?> Reading(string name, string what) => new(name)
    {
        Description = $"{what}, such as 14\" or 350mm.",
        HelpName = "LENGTH",
        CustomParser = r => ReadTape(name, r),
    };

    private static Length? ReadTape(string name, ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        var length = LengthText.Parse(text, LengthUnit.Inch);
        if (length.Ok) return length.Value;
        result.AddError($"{name} cannot be '{text}': write a length such as 14in or 350mm.");
        return null;
    }

    public static Option<string?> Built() => new("--built")
    {
        Description = "What was handed over from the field for this job (.json, .zip): the plan then goes through the line posts that stand.",
        HelpName = "FIELDFILE",
    };

    public static Option<Length?> Spec() => new("--spec")
    {
        Description = "For an outline: height of the fence, such as 6ft, 72in or 1.8288m; otherwise 6 ft.",
        HelpName = "HEIGHT",
        CustomParser = ReadHeight,
    };

    public static Option<CoordinateSystemChoice?> Crs(string name = "--crs") => new(name)
    {
        Description = "For an outline: its coordinates, as EPSG:n, local-m, local-ft or local-ftus (survey feet).",
        HelpName = "SYSTEM",
        CustomParser = ReadSystem,
    };

    private static UnitSystem? ReadUnits(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (text == "us") return UnitSystem.UsCustomary;
        if (text == "metric") return UnitSystem.Metric;
        result.AddError($"--units cannot be '{text}': write us or metric.");
        return null;
    }

    private static Length? ReadHeight(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        var height = LengthText.Parse(text, LengthUnit.Foot);
        if (height is { Ok: true, Value.Metres: > 0 }) return height.Value;
        result.AddError($"--spec cannot be '{text}': write a height such as 6ft, 72in or 1.8288m.");
        return null;
    }

    private static CoordinateSystemChoice? ReadSystem(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        switch (text.ToLowerInvariant())
        {
            case "local-m": return CoordinateSystemChoice.Local(LinearUnit.Metre);
            case "local-ft": return CoordinateSystemChoice.Local(LinearUnit.Foot);
            case "local-ftus": return CoordinateSystemChoice.Local(LinearUnit.SurveyFoot);
            case var epsg when epsg.StartsWith("epsg:", StringComparison.Ordinal)
                               && int.TryParse(epsg[5..], NumberStyles.None, CultureInfo.InvariantCulture, out var code):
                return CoordinateSystemChoice.Epsg(code);
        }
        result.AddError($"{((OptionResult)result.Parent!).IdentifierToken?.Value ?? "--crs"} cannot be '{text}': write EPSG:2992, local-m, local-ft or local-ftus.");
        return null;
    }
}
