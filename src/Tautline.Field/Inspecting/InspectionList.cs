using Tautline.Engine.Catalog;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using static Tautline.Field.Inspecting.CheckMeasure;
using static Tautline.Field.Inspecting.CheckSubject;
using static Tautline.Field.Inspecting.InspectionStage;

namespace Tautline.Field.Inspecting;

/// <summary>
/// The checks, in the order they are made: the one list that the paper and the screen both show. Tolerances are the rule set's in force; where it states none
/// they are those below, each with its source.
/// </summary>
public static class InspectionList
{
    private static readonly Provenance practice = new("common practice, no source", "", "", Confidence.CommonPractice);
    private static readonly Provenance planned = new("the plan", "", "", Confidence.Calculated);
    private static readonly Provenance ufgs13 = new("UFGS 32 31 13", "Part 3", "2010 to 2016 text", Confidence.FromMemory);
    private static readonly Provenance ufgs = new("UFGS-02821A / UFGS 32 31 13.53", "Part 3", "2004 to 2008 text", Confidence.FromMemory);
    private static readonly Provenance handbook = new("MIL-HDBK-1013/10, Security Fencing, Gates, Barriers", "posts", "14 May 1993", Confidence.Published);
    private static readonly Provenance missouri = new("Missouri DOT Standard Specifications", "Sec 607.10.3.1", "edition not shown", Confidence.Published);
    private static readonly Provenance amendment = new("State highway agency amendment, Section 607 (agency not shown)", "", "date not shown", Confidence.Published);
    private static readonly Provenance a392 = new("ASTM A392", "", "", Confidence.FromMemory);
    private static readonly Provenance archive = new("Site construction specification, para 12-04 Fencing (Marshall Islands document archive)", "", "date not shown", Confidence.Published);
    private static readonly Provenance rrf191 = new("Federal Specification RR-F-191/2E", "3.1-3.4", "7 June 2006", Confidence.Published);
    private static readonly Provenance swing = new("trade practice on the swing of gates", "", "", Confidence.FromMemory);

    /// <summary>Every check of a job under its rules. Bounds that hang on the place are differences from the plan.</summary>
    public static IReadOnlyList<CheckItem> Of(Rules rules) =>
    [
        Most(new("spacing", Posts, Run, CheckMeasure.Length, practice), rules.BayMax),
        new("hole", Posts, Post, CheckMeasure.Length, planned) { Least = new(0, planned), FromPlan = true },
        new("plumb", Posts, Post, Degrees, handbook) { Most = Of(rules.Find("post.plumb")) ?? new(2, handbook) },
        new("line", Posts, Post, CheckMeasure.Length, ufgs13) { Most = new(Standing.OutOfLine.Metres, ufgs13) },
        new("top", Posts, Post, CheckMeasure.Length, practice) { Least = new(-Inches(1), practice), Most = new(Inches(1), practice), FromPlan = true },
        new("crown", Posts, Post, Look, missouri),
        new("rigid", Posts, Post, CheckMeasure.Length, ufgs) { Most = new(Inches(0.75), ufgs), Optional = true },
        new("caps", Frame, Run, Look, practice),
        new("rails", Frame, Run, Look, practice),
        new("braces", Frame, Run, Look, practice),
        new("wire", Frame, Run, Look, practice),
        new("cure", Fabric, Run, Days, amendment) { Least = Of(rules.Find("cure.days")) ?? new(7, amendment) },
        Most(new("gap", Fabric, Run, CheckMeasure.Length, practice), rules.GapMax) with { Least = Of(rules.GapMin) },
        new("fabricHeight", Fabric, Run, CheckMeasure.Length, a392) { Least = new(-Inches(1), a392), Most = new(Inches(1), a392), FromPlan = true },
        Most(new("bands", Fabric, Run, CheckMeasure.Length, practice), rules.BandMax),
        Most(new("postTies", Fabric, Run, CheckMeasure.Length, practice), rules.TiePostMax),
        Most(new("railTies", Fabric, Run, CheckMeasure.Length, practice), rules.TieRailMax),
        Most(new("rings", Fabric, Run, CheckMeasure.Length, practice), rules.RingMax),
        new("squeeze", Fabric, Run, CheckMeasure.Length, practice) { Least = Of(rules.Find("mesh.squeezeMin")), Most = Of(rules.Find("mesh.squeezeMax")) },
        new("pull", Fabric, Run, CheckMeasure.Length, ufgs) { Most = new(Inches(2.5), ufgs), Optional = true },
        new("splices", Fabric, Run, Look, practice),
        new("gateTops", Gates, Gate, Look, archive),
        new("gateOpening", Gates, Gate, CheckMeasure.Length, practice) { Least = new(-Inches(0.5), practice), Most = new(Inches(0.5), practice), FromPlan = true },
        new("gateClear", Gates, Gate, CheckMeasure.Length, swing) { Least = new(Inches(2), swing), Most = new(Inches(3), swing) },
        new("gateSwing", Gates, Gate, Look, rrf191),
        new("gateLatch", Gates, Gate, Look, practice),
        new("coating", Finished, Run, Look, practice),
        new("stubs", Finished, Run, Look, practice),
        new("ground", Finished, Run, Look, practice),
    ];

    /// <summary>The checks of one run, the plan's figures put in; what its spec does not have is left out.</summary>
    public static IReadOnlyList<CheckItem> OfRun(Plan plan, int line, int run)
    {
        var (planned, posts) = (plan.Lines[line].Runs[run], RunPosts.Of(plan.Lines[line])[run]);
        var spec = plan.Specs.First(s => s.Id == planned.Spec);
        return
        [
            .. Of(plan.Basis.Rules).Where(i => i.Subject != Gate && Has(i.Key, spec, planned, posts.Count)).Select(i => i.Key == "fabricHeight" ? About(i, spec.Height) : i),
        ];
    }

    /// <summary>A check of one post, the plan's figures put in.</summary>
    public static CheckItem OfPost(CheckItem item, PostPlan post) => item.Key switch
    {
        "hole" => About(item, post.HoleDepth),
        "top" => About(item, post.AboveGround),
        _ => item,
    };

    /// <summary>The checks of one gate.</summary>
    public static IReadOnlyList<CheckItem> OfGate(Plan plan, int line, int gate)
        => [.. Of(plan.Basis.Rules).Where(i => i.Subject == Gate).Select(i => i.Key == "gateOpening" ? About(i, plan.Lines[line].Gates[gate].Opening) : i)];

    private static bool Has(string key, SpecPlan spec, RunPlan run, int posts) => key switch
    {
        "rails" or "railTies" => spec.TopRail,
        "wire" or "rings" => spec.BottomWire || !spec.TopRail,
        "braces" => spec.Braced,
        "postTies" => run.Bays > 1,
        "hole" or "plumb" or "line" or "top" or "crown" or "rigid" => posts > 0,
        _ => true,
    };

    private static CheckItem About(CheckItem item, Length planned) => item with
    {
        FromPlan = false,
        Least = item.Least is { } least ? least with { Value = planned.Metres + least.Value } : null,
        Most = item.Most is { } most ? most with { Value = planned.Metres + most.Value } : null,
    };

    private static CheckItem Most(CheckItem item, Limit limit) => item with { From = limit.From, Most = new(limit.Value, limit.From) };

    private static CheckBound? Of(Limit? limit) => limit is null ? null : new(limit.Value, limit.From);

    private static double Inches(double inches) => Engine.Quantities.Length.FromInches(inches).Metres;
}
