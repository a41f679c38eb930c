using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Site;

/// <summary>Turns the lines of a job into measured chains with their gates, no-dig stretches and standing posts.</summary>
public static class SiteStage
{
    /// <summary>Anything shorter is a slip of the pen, and no place for a post.</summary>
    public static readonly Length ShortestLeg = Length.FromInches(6);

    /// <summary>The job's lines in order, or none at all while an error stands: there is never half a plan.</summary>
    public static IReadOnlyList<SiteLine> Measure(
        Job job, IReadOnlyList<ResolvedSpec> specs, FenceCatalog catalog, BuiltFacts built, ProblemList problems)
    {
        if (problems.HasErrors) return [];
        var byId = specs.ToDictionary(s => s.Spec.Id);
        var surface = SurfaceReader.Read(job.Ground, problems);
        var lines = job.Lines
            .Select((line, at) => (line, at)).OrderBy(l => l.line.Order)
            .Select((l, index) => Measure(job, l.line, l.at, index, byId, catalog, built, surface, problems)).ToList();
        CheckBuilt(lines, built, problems);
        LineGaps.Check(lines, job, problems);
        return problems.HasErrors ? [] : lines;
    }

    private static SiteLine Measure(
        Job job, Line line, int at, int index, Dictionary<SpecId, ResolvedSpec> specs, FenceCatalog catalog, BuiltFacts built,
        IGroundSurface? surface, ProblemList problems)
    {
        var chain = OnGround(line, $"lines[{at}]", LegsOf(line, $"lines[{at}]", specs, problems), surface, job.Ground is not null, problems);
        var legs = chain.Legs.Where(l => l.Leg is not null).ToDictionary(l => l.Leg!.Id);
        var stretches = ObstacleReader.Read(job, legs, line.Id, problems);
        Parts(line, $"lines[{at}]", problems);
        CheckSide(line, chain, problems);
        FitReader.Check(line, $"lines[{at}].fit", problems);
        var site = new SiteLine(
            index, line, chain, GateReader.Read(job, legs, chain, catalog, line.Id, problems), stretches.Zones, PinReader.Read(job, built, legs, problems))
        {
            Grounds = stretches.Grounds,
            Tasks = [.. WorkReader.Read(job, legs, line.Id, problems).Concat(stretches.Closures).Select(t => OnGround(t, chain))],
            TieAtStart = TieReader.Read(line.Start, line, $"lines[{at}].start", catalog, problems),
            TieAtFinish = TieReader.Read(line.Finish, line, $"lines[{at}].finish", catalog, problems),
        };
        ZoneCheck.Check(site, job, problems);
        return site;
    }

    /// <summary>Where the ground was measured the legs' own grades do not count.</summary>
    private static Chain OnGround(
        Line line, string path, List<SiteLeg> legs, IGroundSurface? surface, bool told, ProblemList problems)
        => GroundReader.Read(line, path, legs, surface, told, problems) is not { } ground ? new Chain(legs)
            : new Chain(ground.Measured ? [.. legs.Select(l => l with { Grade = 0, AlongNm = l.LevelNm, StartAlongNm = l.StartNm })] : legs, ground.Ground);

    private static SiteTask OnGround(SiteTask task, Chain chain)
        => chain.Ground is { } ground ? task with { GroundNm = ground.Along(task.ToNm) - ground.Along(task.FromNm) } : task;

    private static List<SiteLeg> LegsOf(Line line, string path, Dictionary<SpecId, ResolvedSpec> specs, ProblemList problems)
    {
        var vertices = line.Vertices.Select((v, i) => (v, i)).OrderBy(p => p.v.Order).ToList();
        if (line.Closed && Same(vertices[0].v, vertices[^1].v))
            problems.Add(ProblemCode.LineVertexTwice, new($"{path}.vertices[{vertices[^1].i}]", line.Id));
        List<SiteLeg> legs = [];
        var count = line.Closed ? vertices.Count : vertices.Count - 1;
        for (var i = 0; i < count; i++)
        {
            var from = vertices[i].v;
            var to = vertices[(i + 1) % vertices.Count].v;
            var spec = specs[from.Leg?.Spec ?? line.Spec];
            legs.Add(LegOf(legs, from, to, spec, new($"{path}.vertices[{vertices[i].i}]", line.Id), problems));
        }
        return legs;
    }

    private static SiteLeg LegOf(List<SiteLeg> before, Vertex from, Vertex to, ResolvedSpec spec, Place place, ProblemList problems)
    {
        var (east, north) = (to.East - from.East, to.North - from.North);
        var straight = new Length(Math.Sqrt(east.Metres * east.Metres + north.Metres * north.Metres));
        if (straight.Nanometres < ShortestLeg.Nanometres) problems.Add(ProblemCode.LegShort, place, straight, ShortestLeg);
        var curve = CurveReader.Read(from.Leg?.Curve, from, to, straight, place, problems);
        var level = curve?.Curve.ArcLength ?? straight;
        var heading = curve?.Tangent ?? (straight.Metres > 0 ? new Direction(east / straight, north / straight) : new Direction(0, 1));
        var grade = from.Leg?.Grade.Ratio ?? 0;
        var along = new Length(level.Metres * Math.Sqrt(1 + grade * grade));
        var (start, startAlong) = before.Count == 0 ? (0L, 0L) : (before[^1].EndNm, before[^1].EndAlongNm);
        return new SiteLeg(
            before.Count, from.Leg, from, to, heading, Math.Max(1, level.Nanometres), Math.Max(1, along.Nanometres), grade, start, startAlong, spec,
            curve);
    }

    private static void Parts(Line line, string path, ProblemList problems)
    {
        SpecStage.Choice(line.FabricSide, $"{path}.fabricSide", problems, "left", "right");
        for (var i = 0; i < line.Keeps.Count; i++) SpecStage.Choice(line.Keeps[i], $"{path}.keeps[{i}]", problems, "line-posts", "rail", "wire");
    }

    /// <summary>On a curve fabric hangs outside, whatever side the line asks for.</summary>
    private static void CheckSide(Line line, Chain chain, ProblemList problems)
    {
        if (line.FabricSide is null) return;
        foreach (var leg in chain.Legs.Where(l => l.Curve is { } c && line.FabricSide == (c.Side == CurveSide.Left ? "left" : "right")))
            problems.Add(
                ProblemCode.FabricInside, new("", line.Id, Length.FromNanometres(leg.StartNm)), line.FabricSide, leg.Curve!.Curve.Radius);
    }

    private static bool Same(Vertex a, Vertex b)
        => a.East.Nanometres == b.East.Nanometres && a.North.Nanometres == b.North.Nanometres;

    private static void CheckBuilt(List<SiteLine> lines, BuiltFacts built, ProblemList problems)
    {
        var legs = lines.SelectMany(l => l.Chain.Legs).Select(l => l.Leg?.Id).OfType<LegId>().ToHashSet();
        foreach (var post in built.Posts.Where(p => !legs.Contains(p.Leg)))
            problems.Add(ProblemCode.BuiltLegUnknown, new("built"), post.Id.Value, post.Leg.Value);
    }
}
