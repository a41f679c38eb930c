using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Site;

/// <summary>Reads the gates of one line: kind, place, leaf, and the posts that carry it.</summary>
internal static class GateReader
{
    private sealed record Opening(GateKind Kind, int Leaves, double LeastFeet, double MostFeet);

    private static readonly Opening walk = new(GateKind.Walk, 1, 2, 18);
    private static readonly Opening pair = new(GateKind.Double, 2, 4, 48);
    private static readonly Opening slide = new(GateKind.Cantilever, 1, 6, 30);
    private static readonly Opening rolling = new(GateKind.Rolling, 1, 6, 60);
    private static readonly Opening overhead = new(GateKind.Overhead, 1, 6, 60);

    public static IReadOnlyList<SiteGate> Read(
        Job job, Dictionary<LegId, SiteLeg> legs, Chain chain, FenceCatalog catalog, LineId line, ProblemList problems)
    {
        List<SiteGate> gates = [];
        for (var i = 0; i < job.Gates.Count; i++)
            if (legs.TryGetValue(job.Gates[i].Leg, out var leg)
                && Read(job.Gates[i], leg, chain, catalog, new($"gates[{i}]", line, Station(leg, job.Gates[i])), problems) is { } gate)
                gates.Add(gate);
        gates.Sort((a, b) => a.NearFaceNm.CompareTo(b.NearFaceNm));
        var numbered = gates.Select((g, i) => g with { Index = i }).ToList();
        foreach (var (a, b) in numbered.Zip(numbered.Skip(1))) CheckApart(a, b, line, problems);
        return numbered;
    }

    /// <summary>The least and the largest opening a kind of gate is made for, feet; nothing for a kind that is not known.</summary>
    internal static (double LeastFeet, double MostFeet)? Sizes(string kind) => Of(kind) is { } known ? (known.LeastFeet, known.MostFeet) : null;

    private static Opening? Of(string kind)
        => kind switch { Gate.Walk => walk, Gate.Double => pair, Gate.Cantilever => slide, Gate.Rolling => rolling, Gate.Overhead => overhead, _ => null };

    private static Length Station(SiteLeg leg, Gate gate) => Length.FromNanometres(leg.StartNm) + gate.NearFace;

    private static SiteGate? Read(Gate gate, SiteLeg leg, Chain chain, FenceCatalog catalog, Place place, ProblemList problems)
    {
        var kind = Of(gate.Kind);
        if (kind is null)
        {
            problems.Add(ProblemCode.GateKind, place, gate.Kind);
            return null;
        }
        if (!(gate.Opening.Feet >= kind.LeastFeet - 1e-9 && gate.Opening.Feet <= kind.MostFeet + 1e-9))
        {
            problems.Add(ProblemCode.GateSize, place, gate.Opening);
            return null;
        }
        var leaf = gate.Opening / kind.Leaves; // the nominal leaf, as gates are sold
        if (gate.Post is null && kind.Kind is GateKind.Rolling or GateKind.Overhead)
        {
            problems.Add(ProblemCode.GatePostUnnamed, place, gate.Id.Value, gate.Kind);
            return null;
        }
        if (gate.LeafMass is not > 0 && kind.Kind is GateKind.Rolling or GateKind.Overhead)
            problems.Add(ProblemCode.GateWeightQuestion, place with { Path = $"{place.Path}.leafMass" }, gate.Id.Value);
        if (kind.Kind == GateKind.Overhead) CheckBeam(gate, place, problems);
        if (gate.Post is not null && catalog.FindSection(gate.Post) is null)
        {
            problems.Add(ProblemCode.SpecSection, place with { Path = $"{place.Path}.post" }, gate.Post);
            return null;
        }
        var row = gate.Post is not null ? Named(catalog.FindSection(gate.Post)!) : kind.Kind == GateKind.Cantilever ? Roller(leg.Spec.Rules) : PostRow(leg.Spec, leaf, catalog);
        if (row is null || (gate.Post is null ? catalog.FindPipe(Length.Max(row.OutsideDiameter, leg.Spec.TerminalPost.OutsideDiameter)) : catalog.FindSection(gate.Post)) is not { } post)
        {
            problems.Add(ProblemCode.GatePostUnlisted, place, leaf, leg.Spec.Height);
            return null;
        }
        if (kind.Kind is GateKind.Cantilever or GateKind.Rolling or GateKind.Overhead) CheckRunBack(gate, leg, chain, place, problems);
        if (leg.Curve is not null) problems.Add(ProblemCode.GateOnCurve, place, gate.Id.Value);
        CheckFits(gate, leg, post, place, problems);
        return new SiteGate(0, gate, kind.Kind, leg, leg.StartNm + gate.NearFace.Nanometres, gate.Opening.Nanometres, kind.Leaves, post, row);
    }

    /// <summary>Roller and latch posts of a cantilever gate are of one size whatever the leaf.</summary>
    private static GatePostRow Roller(Rules rules)
        => new(Length.Zero, Length.Zero, Length.Zero, rules.CantileverPost.Length, Length.Zero, Length.Zero, rules.CantileverPost.From);

    private static void CheckBeam(Gate gate, Place place, ProblemList problems)
    {
        if (gate.Clearance is not { Metres: > 0 and < 100 })
            problems.Add(ProblemCode.GateClearanceQuestion, place with { Path = $"{place.Path}.clearance" }, gate.Id.Value);
        problems.Add(ProblemCode.GateBeam, place, gate.Id.Value);
    }

    /// <summary>A post the job names, with a hole by the rules alone.</summary>
    private static GatePostRow Named(Section post)
        => new(Length.Zero, Length.Zero, Length.Zero, post.OutsideDiameter, Length.Zero, Length.Zero, post.From);

    /// <summary>The open leaf lies behind the first post: the leaf's length of straight leg, and no higher ground than it clears.</summary>
    private static void CheckRunBack(Gate gate, SiteLeg leg, Chain chain, Place place, ProblemList problems)
    {
        if (gate.RunsBack is not ("start" or "end"))
        {
            problems.Add(ProblemCode.RunsBackUnknown, place with { Path = $"{place.Path}.runsBack" }, gate.Id.Value);
            return;
        }
        var level = Length.FromNanometres(leg.LevelNm);
        var needs = gate.Opening + (gate.Kind == Gate.Cantilever ? new Length(GateFormulas.CantileverTail<Plain>(gate.Opening.Metres, leg.Spec.Rules).Value) : leg.Spec.Rules.RollingOver.Length);
        var leaves = gate.RunsBack == "end" ? level - gate.NearFace - gate.Opening : gate.NearFace;
        if (leaves.Nanometres < needs.Nanometres) problems.Add(ProblemCode.RunBackShort, place, gate.Id.Value, needs, leaves);
        CheckTravel(gate, leg, chain, gate.Opening + needs, place, problems);
    }

    /// <summary>The bottom of the leaf clears the highest ground of its whole travel.</summary>
    private static void CheckTravel(Gate gate, SiteLeg leg, Chain chain, Length travel, Place place, ProblemList problems)
    {
        if (chain.Ground is not { } ground)
        {
            if (Math.Abs(leg.Grade) > 0.005)
                problems.Add(ProblemCode.RunBackSlope, place, gate.Id.Value, leg.Grade * 100, travel * Math.Abs(leg.Grade));
            return;
        }
        var (near, far) = (leg.StartNm + gate.NearFace.Nanometres, leg.StartNm + (gate.NearFace + gate.Opening).Nanometres);
        if (far > leg.EndNm || near < leg.StartNm) return;
        var (from, to) = gate.RunsBack == "end" ? (near, Math.Min(leg.EndNm, near + travel.Nanometres)) : (Math.Max(leg.StartNm, far - travel.Nanometres), far);
        var over = ground.HighestWithin(from, to) - Math.Min(ground.HeightAt(near), ground.HeightAt(far));
        if (over > 0.005 * travel.Metres)
            problems.Add(ProblemCode.RunBackSlope, place, gate.Id.Value, chain.GradeBetween(leg, from, to) * 100, new Length(over));
    }

    /// <summary>The post the rule set asks for, else the catalogue's.</summary>
    private static GatePostRow? PostRow(ResolvedSpec spec, Length leaf, FenceCatalog catalog)
        => spec.Rules.GatePost(spec.Height, leaf) is { } size
            ? new GatePostRow(Length.Zero, spec.Height, leaf, size.Length, Length.Zero, Length.Zero, size.From)
            : catalog.FindGatePost(spec.Height, leaf);

    /// <summary>A gate opens within its leg; its posts may reach past a vertex, and then stand on it.</summary>
    private static void CheckFits(Gate gate, SiteLeg leg, Section post, Place place, ProblemList problems)
    {
        var level = Length.FromNanometres(leg.LevelNm);
        var needs = gate.Opening + post.OutsideDiameter;
        if (needs.Metres > level.Metres + 1e-9)
            problems.Add(ProblemCode.GateTooWide, place, needs, level);
        else if (gate.NearFace.Metres < -1e-9 || (gate.NearFace + gate.Opening).Metres > level.Metres + 1e-9)
            problems.Add(ProblemCode.GateOutside, place, gate.NearFace, level);
    }

    private static void CheckApart(SiteGate a, SiteGate b, LineId line, ProblemList problems)
    {
        var least = Length.Max(a.Post.OutsideDiameter, b.Post.OutsideDiameter) * 2;
        if (b.NearFaceNm - a.FarFaceNm < least.Nanometres)
            problems.Add(
                ProblemCode.GateOverlap, new("gates", line, Length.FromNanometres(b.NearFaceNm)), a.Gate.Id.Value, b.Gate.Id.Value, least);
    }
}
