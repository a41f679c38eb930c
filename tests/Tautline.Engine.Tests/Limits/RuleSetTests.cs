using System.Text;
using System.Text.Json;
using CsCheck;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;
using Tautline.Engine.Tests.Reasons;
using Tautline.Engine.Tests.TapeBook;

namespace Tautline.Engine.Tests.Limits;

/// <summary>Sets as files, one over the other, and the job's own limits over both.</summary>
public sealed class RuleSetTests
{
    public static TheoryData<string> Names => [.. RuleSets.Names];

    private static Rules Read(string json) => Rules.Read(Encoding.UTF8.GetBytes(json));

    private static string Own(string rules, string extends = "caltrans") => $$"""
        {
          "name": "county", "title": "Invented county", "extends": "{{extends}}",
          "sources": { "c": { "title": "Invented county standard", "edition": "3" } },
          "rules": [{{rules}}]
        }
        """;

    private static string Row(string key, double value, string unit, string more = "") => FormattableString.Invariant(
        $$"""{ "key": "{{key}}", "value": {{value}}, "unit": "{{unit}}", "condition": "", "source": "c", "clause": "2.1", "confidence": "published"{{more}} }""");

    private static string ByTheSet(string set) => JsonDocument.Parse(typeof(RuleSets).Assembly.GetManifestResourceStream($"rules-{set}.json")!).RootElement.GetProperty("name").GetString()!;

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryRowHasAKnownKeyASourceAnEditionAndItsSet(string name)
    {
        var set = RuleSets.Find(name)!;
        Assert.Equal((name, name), (set.Name, ByTheSet(name)));
        Assert.Equal(name == "base" ? null : "base", set.Extends);
        Assert.Contains(set.All, l => l.Set == name);
        Assert.All(set.All, l =>
        {
            Assert.Same(RuleKeys.Find(l.Key), l.Rule);
            Assert.NotEmpty(l.From.Source);
            if (l.Set != "base") Assert.NotEmpty(l.From.Edition);
            Assert.Contains(l.Set, new[] { name, "base" });
        });
    }

    /// <summary>How few lengths a shop wants to order no standard says.</summary>
    [Fact]
    public void EveryKeyButTheShopsOwnIsStatedByASetAndTheNeededOnesByTheBaseSet()
    {
        string[] own = ["post.lengthClasses"];
        var stated = RuleSets.Names.SelectMany(n => RuleSets.Find(n)!.All).Select(l => l.Key).ToHashSet();
        Assert.Equal(RuleKeys.All.Select(k => k.Key).Except(own), stated.Order(StringComparer.Ordinal));
        Assert.All(RuleKeys.All.Where(k => k.Use == RuleUse.Needed), k => Assert.Equal("base", RuleSets.Base[k.Key].Set));
    }

    /// <summary>Bands 15 in by base, 12 by Caltrans, 9 by the county that extends it, 6 as the job specifies; rings 18 by Caltrans; bays 10 by base.</summary>
    [Fact]
    public void TheJobGoesOverTheAgencyAndTheAgencyOverTheBaseSet()
    {
        var county = Read(Own(Row("band.max", 9, "in")));
        Assert.Equal([15, 12, 9], new[] { RuleSets.Base, RuleSets.Find("caltrans")!, county }.Select(r => Math.Round(r.BandMax.Length.Inches, 9)));
        Assert.Equal(["county", "caltrans", "base"], new[] { county.BandMax, county.RingMax, county.BayMax }.Select(l => l.Set));
        Assert.Equal(18, county.RingMax.Length.Inches, 9);
        var job = county.AsSpecified([new RuleOverride { Rule = "band.max", Value = 0.1524, Source = "drawing C-3" }]);
        Assert.Equal((6, "as specified", "drawing C-3"), (Math.Round(job.BandMax.Length.Inches, 9), job.BandMax.Set, job.BandMax.From.Source));
        Assert.Equal("caltrans", job.RingMax.Set);
    }

    /// <summary>Limits no set below states: 6 in of concrete under the post, one size of line post at every height.</summary>
    [Fact]
    public void AJobMayStateWhatTheSetDoesNot()
    {
        RuleOverride[] own = [new() { Rule = "hole.concreteBelow", Value = 0.1524 }, new() { Rule = "post.lineSize", Value = 0.073025 }];
        var plan = Some.Plan(Some.StraightHundred() with { AsSpecified = own, Specs = [Some.Spec() with { LinePost = null }] });
        Assert.Equal("2.875-sch40", plan.Specs[0].LinePost);
        Assert.All(plan.Lines[0].Posts, p => Assert.Equal(36, p.HoleDepth.Inches, 9));
        Assert.Equal(["hole.concreteBelow", "post.lineSize"], plan.Limits.Where(l => l.Set == "as specified").Select(l => l.Key));
    }

    [Fact]
    public void AJobMayTakeBackWhatTheSetAsks()
    {
        var job = Some.StraightHundred() with { RuleSet = "tremonton", AsSpecified = [new() { Rule = "hole.concreteBelow", Value = 0 }] };
        var plan = JobPlanner.Plan(job, Some.Catalog, RuleSets.For(job), BuiltFacts.None);
        Assert.False(plan.HasErrors);
        Assert.All(plan.Lines[0].Posts, p => Assert.Equal(30, p.HoleDepth.Inches, 9));
    }

    [Fact]
    public void ThePlanSaysWhichSetGaveEachLimit()
    {
        var job = Some.StraightHundred() with { RuleSet = "caltrans", AsSpecified = [new() { Rule = "bay.max", Value = 2.4384, Source = "drawing C-3" }] };
        var plan = JobPlanner.Plan(job, Some.Catalog, RuleSets.For(job), BuiltFacts.None);
        Assert.Equal("caltrans", plan.RuleSet);
        Assert.Equal(
            ["band.max", "bay.max", "brace.height", "brace.lineInterval", "ring.max", "tie.postMax", "wire.topBelow"], plan.Limits.Select(l => l.Key));
        var (band, bay) = (plan.Limits[0], plan.Limits[1]);
        Assert.Equal(("caltrans", "m", Confidence.Published, true), (band.Set, band.Unit, band.Confidence, band.Planned));
        Assert.Equal((0.3048, 0.381), (band.Value, band.Base!.Value));
        Assert.Equal(("as specified", "drawing C-3", Confidence.AsSpecified), (bay.Set, bay.Source, bay.Confidence));
        using var json = JsonDocument.Parse(PlanFile.Canonical(plan));
        Assert.Equal("as-specified", json.RootElement.GetProperty("limits")[1].GetProperty("confidence").GetString());
        Assert.Empty(Some.Plan(Some.StraightHundred()).Limits);
    }

    [Fact]
    public void AnUnknownSetIsToldWithThoseThatAreKnown()
    {
        var problem = Assert.Single(Some.Plan(Some.StraightHundred() with { RuleSet = "moon" }).Problems, p => p.Code == ProblemCode.RuleSetUnknown);
        Assert.Equal("The rule set 'moon' is not known.", ProblemText.Message(problem, UnitSystem.UsCustomary));
        Assert.Equal(
            "Known are: base, caltrans, faa, missouri-dot, navy, ohio-dot, tremonton, usace. A set of your own is given as a file.",
            ProblemText.Hint(problem, UnitSystem.UsCustomary));
    }

    [Theory]
    [InlineData("rule 'bay.maximum' is not known", "bay.maximum", 8, "ft", "")]
    [InlineData("rule 'bay.max' cannot have the unit 'deg'", "bay.max", 8, "deg", "")]
    [InlineData("rule 'terminal.turn' cannot have the unit 'ft'", "terminal.turn", 8, "ft", "")]
    [InlineData("rule 'bay.max' cannot be 0 ft", "bay.max", 0, "ft", "")]
    [InlineData("rule 'brace.atHeight' cannot be 2 ", "brace.atHeight", 2, "", "")]
    [InlineData("rule 'bay.max' has one value and takes no 'upTo'", "bay.max", 8, "ft", ", \"upTo\": 3, \"upToUnit\": \"ft\"")]
    [InlineData("'upTo' of rule 'bay.curve' needs 'upToUnit': in, ft, mm or m", "bay.curve", 8, "ft", ", \"upTo\": 3")]
    public void ARowThatCannotBeIsRefused(string message, string key, double value, string unit, string more)
        => Assert.Equal(message, Assert.Throws<InvalidDataException>(() => Read(Own(Row(key, value, unit, more)))).Message);

    [Fact]
    public void AFileThatCannotBeASetIsRefused()
    {
        Assert.Equal(
            "rule 'bay.max' is stated twice",
            Assert.Throws<InvalidDataException>(() => Read(Own(Row("bay.max", 8, "ft") + "," + Row("bay.max", 9, "ft")))).Message);
        Assert.StartsWith(
            "'county' extends 'moon', which is not known; known are: base, ",
            Assert.Throws<InvalidDataException>(() => Read(Own("", "moon"))).Message, StringComparison.Ordinal);
        Assert.Equal(
            "a set that extends 'county' needs a name of its own", Assert.Throws<InvalidDataException>(() => Read(Own("", "county"))).Message);
        Assert.Equal("the rule set has no 'name'", Assert.Throws<InvalidDataException>(() => Read("{}")).Message);
        Assert.Throws<InvalidDataException>(() => Read("""{ "name": "county" }"""));
        Assert.Throws<InvalidDataException>(() => Read(Own(Row("bay.max", 8, "ft").Replace("\"c\"", "\"d\"", StringComparison.Ordinal))));
    }

    [Fact]
    public void TheSetInTheGuideCanBeRead()
    {
        var guide = File.ReadAllText(Path.Combine(SampleTests.Folder(), "..", "docs", "rule-sets.md"));
        var set = Read(guide.Split("```json").Select(b => b.Split("```")[0]).Single(b => b.Contains("\"extends\"", StringComparison.Ordinal)));
        Assert.Equal(("county", "caltrans"), (set.Name, set.Extends));
        Assert.Equal(8, set.BayMax.Length.Feet, 9);
        Assert.All(RuleSets.Names, n => Assert.Contains($"| `{n}` |", guide, StringComparison.Ordinal));
    }

    /// <summary>A set states all steps of a limit or none: Ohio's gate posts would else mix with those below.</summary>
    [Fact]
    public void StepsAreReplacedTogether()
    {
        var county = Read(Own(Row("gate.postSize", 4, "in", ", \"upTo\": 10, \"upToUnit\": \"ft\""), "ohio-dot"));
        Assert.Equal(["county"], county.All.Where(l => l.Key == "gate.postSize").Select(l => l.Set));
        Assert.Null(county.At("gate.postSize", Length.FromFeet(11)));
        Assert.Equal(4, county.At("gate.postSize", Length.FromFeet(10))!.Length.Inches, 9);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryFigureByEverySetIsRecomputedFromItsReasons(string name)
        => GenJob.Any.Always(
            job => FactCheck.All(JobPlanner.Plan(job with { RuleSet = name }, Some.Catalog, RuleSets.Find(name)!, BuiltFacts.None)),
            iter: 8);

    [Fact]
    public void ATapeBookNamesItsSetAndItsOwnLimits()
    {
        var job = Books.Job("rules tremonton\nas specified hole.concreteBelow 0\"\nas specified brace.atHeight yes\nas specified cure.days 7 days\nspec fence height 6'\nline main\nleg 100'");
        Assert.Equal("tremonton", job.RuleSet);
        Assert.Equal([("hole.concreteBelow", 0), ("brace.atHeight", 1), ("cure.days", 7)], job.AsSpecified.Select(o => (o.Rule, o.Value)));
        var again = Books.Job(TapeBookWriter.Write(job, UnitSystem.Metric).Text);
        Assert.Equal(job.RuleSet, again.RuleSet);
        Assert.Equal(job.AsSpecified.Select(o => o.Value), again.AsSpecified.Select(o => o.Value));
    }

    [Fact]
    public void ATapeBookIsToldOfALimitThatCannotBe()
    {
        var problem = TapeBookReader.Read("as specified bay.max 0'\nspec fence height 6'\nline main\nleg 100'").Problems.Single(p => p.Severity == Severity.Error);
        Assert.Equal((1, 22, "rule-value"), (problem.Line, problem.Column, problem.Code));
    }
}
