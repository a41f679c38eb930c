using Tautline.Engine.Jobs;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Site;

/// <summary>Finds the ground under one line: from shots, from the job's surface, or, where a fit is asked for, from the grades of the legs.</summary>
internal static class GroundReader
{
    private const int MostGapsTold = 20;

    /// <summary>Ground that rises faster over more than a stride is told: feet read as metres look so. Our own practice.</summary>
    private const double Implausible = 1.5;
    private const double Stride = 1;

    /// <summary>Grades of a closed line that end so far off their start are told; our own practice.</summary>
    private const double OffStart = 0.05;

    /// <summary>The ground, and whether it was measured; nothing where the line runs on its legs' grades.</summary>
    public static (GroundLine Ground, bool Measured)? Read(
        Line line, string path, IReadOnlyList<SiteLeg> legs, IGroundSurface? surface, bool told, ProblemList problems)
    {
        SpecStage.Choice(line.Ground?.From, $"{path}.ground.from", problems, LineGround.FromShots, LineGround.FromSurface, LineGround.FromGrades);
        if (legs.Count == 0) return null;
        var from = line.Ground?.From ?? (line.Ground?.Shots.Count > 0 ? LineGround.FromShots : surface is not null ? LineGround.FromSurface : LineGround.FromGrades);
        if (from == LineGround.FromGrades) return line.Fit is null ? null : (FromGrades(line, path, legs, problems), false);
        var vertices = from == LineGround.FromShots ? FromShots(line, path, legs, problems) : FromSurface(line, path, legs, surface, told, problems);
        if (vertices is null) return null;
        TellSteep(line, path, vertices, problems);
        foreach (var leg in legs.Where(l => l.Grade != 0))
            problems.Add(ProblemCode.GradeUnused, new(path, line.Id, Length.FromNanometres(leg.StartNm)), leg.Grade * 100);
        return (new GroundLine(vertices), true);
    }

    private static GroundLine FromGrades(Line line, string path, IReadOnlyList<SiteLeg> legs, ProblemList problems)
    {
        List<GroundVertex> vertices = [new(0, 0)];
        foreach (var leg in legs) vertices.Add(new(leg.EndNm * 1e-9, vertices[^1].Height + leg.Grade * (leg.LevelNm * 1e-9)));
        if (line.Closed && Math.Abs(vertices[^1].Height) > OffStart)
            problems.Add(ProblemCode.GradesOpen, new(path, line.Id), new Length(Math.Abs(vertices[^1].Height)));
        return new GroundLine(vertices);
    }

    private static List<GroundVertex>? FromShots(Line line, string path, IReadOnlyList<SiteLeg> legs, ProblemList problems)
    {
        var byId = legs.Where(l => l.Leg is not null).ToDictionary(l => l.Leg!.Id);
        var shots = ShotReader.Read(line, path, byId, problems);
        if (shots.Count == 0)
        {
            problems.Add(ProblemCode.GroundFewShots, new($"{path}.ground.shots", line.Id), shots.Count);
            return null;
        }
        return Reaching(line, path, [.. shots], legs[^1].EndNm * 1e-9, problems);
    }

    /// <summary>Carries the ground level to both ends of the line where it was not measured; a closed line comes back to its start.</summary>
    private static List<GroundVertex> Reaching(Line line, string path, List<GroundVertex> vertices, double end, ProblemList problems)
    {
        if (line.Closed && vertices[^1].Station < end && vertices[0].Station == 0) vertices.Add(new(end, vertices[0].Height));
        else if (line.Closed && vertices[0].Station > 0 && vertices[^1].Station == end) vertices.Insert(0, new(0, vertices[^1].Height));
        if (vertices[0].Station > 0)
        {
            Gap(line, path, 0, vertices[0].Station, problems);
            vertices.Insert(0, new(0, vertices[0].Height));
        }
        if (vertices[^1].Station < end)
        {
            Gap(line, path, vertices[^1].Station, end, problems);
            vertices.Add(new(end, vertices[^1].Height));
        }
        return vertices;
    }

    private static List<GroundVertex>? FromSurface(
        Line line, string path, IReadOnlyList<SiteLeg> legs, IGroundSurface? surface, bool told, ProblemList problems)
    {
        if (surface is null)
        {
            if (!told) problems.Add(ProblemCode.GroundMissing, new($"{path}.ground.from", line.Id));
            return null;
        }
        var profile = surface.Along(PathOf(legs));
        if (profile.Stretches.Count == 0)
        {
            problems.Add(ProblemCode.GroundOutside, new(path, line.Id));
            return null;
        }
        var end = legs[^1].EndNm * 1e-9;
        foreach (var gap in profile.Gaps.Take(MostGapsTold).Where(g => g.From > 0 && g.To < profile.Range.To)) Gap(line, path, gap.From, gap.To, problems);
        List<GroundVertex> vertices = [.. profile.Stretches.SelectMany(s => s.Points).Select(p => new GroundVertex(Math.Min(end, p.Station), p.Height))];
        if (end - vertices[^1].Station < 1e-6) vertices[^1] = vertices[^1] with { Station = end };
        return Reaching(line, path, vertices, end, problems);
    }

    private static void Gap(Line line, string path, double from, double to, ProblemList problems)
        => problems.Add(ProblemCode.GroundGap, new(path, line.Id, new Length(from)), new Length(from), new Length(to));

    /// <summary>The way of the line in plan, arcs as arcs.</summary>
    internal static GroundPath PathOf(IReadOnlyList<SiteLeg> legs)
    {
        var path = new GroundPath(new(legs[0].From.East.Metres, legs[0].From.North.Metres));
        foreach (var leg in legs)
            if (leg.Curve is { } curve) path.CurveTo(curve);
            else path.LineTo(new(leg.To.East.Metres, leg.To.North.Metres));
        return path;
    }

    /// <summary>Tells the steepest piece where it is too steep for ground.</summary>
    private static void TellSteep(Line line, string path, List<GroundVertex> vertices, ProblemList problems)
    {
        var (worst, at) = (0.0, 0.0);
        for (var i = 1; i < vertices.Count; i++)
        {
            var (run, rise) = (vertices[i].Station - vertices[i - 1].Station, Math.Abs(vertices[i].Height - vertices[i - 1].Height));
            if (run >= Stride && rise / run > worst) (worst, at) = (rise / run, vertices[i - 1].Station);
        }
        if (worst > Implausible) problems.Add(ProblemCode.GroundSteep, new(path, line.Id, new Length(at)), worst * 100);
    }
}
