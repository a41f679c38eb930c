using Tautline.Engine.Layout;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>A run with its two terminals and the grade of the rail at each, seen walking the line forward.</summary>
/// <param name="TurnAtStart">Degrees the line turns at its first terminal, right positive; 0 at an end or a gate.</param>
/// <param name="TurnAtEnd">The same at its last.</param>
public sealed record HungRun(
    Run Run, int From, int To, PlacedPost First, PlacedPost Last, double GradeAtStart, double GradeAtEnd, double TurnAtStart, double TurnAtEnd)
{
    /// <summary>The bays as they were fitted to measured ground; none where the run follows its legs' grades.</summary>
    public IReadOnlyList<FittedBay> Fitted { get; init; } = [];

    /// <summary>Length of the bay at an end along the fence.</summary>
    public long BraceBayNm(Chain chain, int end) => BayNm(chain, end == 0 ? 0 : Run.Bays - 1);

    /// <summary>Length of a bay along the fence: along the rail where that was fitted, else along the ground.</summary>
    public long BayNm(Chain chain, int bay)
    {
        var (from, to) = (Run.Stations[bay], Run.Stations[bay + 1]);
        if (Fitted.Count == 0) return chain.Along(to) - chain.Along(from);
        var slope = Fitted[bay].Slope;
        return new Length((to - from) * 1e-9 * Math.Sqrt(1 + slope * slope)).Nanometres;
    }
}

/// <summary>A line with posts set and fabric hung: the records the figures are worked from.</summary>
public sealed record HungLine(SetLine Set, IReadOnlyList<HungRun> Runs)
{
    public SiteLine Site => Set.Site;

    public IReadOnlyList<PlacedPost> Posts => Set.Posts;
}

/// <summary>Hangs one pull on every run.</summary>
public static class FabricStage
{
    public static IReadOnlyList<HungLine> Hang(IReadOnlyList<SetLine> lines) => [.. lines.Select(Hang)];

    private static HungLine Hang(SetLine line)
    {
        Dictionary<long, int> byStation = new(line.Posts.Count);
        foreach (var post in line.Posts) byStation[post.StationNm] = post.Index;
        if (line.Site.Line.Closed) byStation[line.Site.Chain.LevelNm] = 0;
        var fitted = Fitted(line);
        return new HungLine(line, [.. line.Runs.Select(r => Over(Hang(r, line, byStation), fitted))]);
    }

    /// <summary>The fitted bays by the station they begin at.</summary>
    private static Dictionary<long, FittedBay> Fitted(SetLine line)
        => line.Pieces.SelectMany(p => p.Fitted.Bays.Select(b => (Station: p.Stations[b.Index], b))).ToDictionary(b => b.Station, b => b.b);

    /// <summary>The rail over measured ground has the slopes of its bays.</summary>
    private static HungRun Over(HungRun run, Dictionary<long, FittedBay> fitted)
    {
        if (fitted.Count == 0) return run;
        List<FittedBay> bays = [.. run.Run.Stations.SkipLast(1).Select(s => fitted[s])];
        return run with { Fitted = bays, GradeAtStart = bays[0].Slope, GradeAtEnd = bays[^1].Slope };
    }

    /// <summary>Degrees the line turns at a station, right positive.</summary>
    private static double Turn(SiteLine site, long station)
    {
        var (before, after) = PostStage.Sides(site, station);
        return ReferenceEquals(before, after) ? 0 : Direction.Between(before.Ahead, after.Heading);
    }

    private static HungRun Hang(Run run, SetLine line, Dictionary<long, int> byStation)
    {
        var (from, to) = (byStation[run.Stretch.FromNm], byStation[run.Stretch.ToNm]);
        var chain = line.Site.Chain;
        return new HungRun(
            run, from, to, line.Posts[from], line.Posts[to], chain.LegFrom(run.Stretch.FromNm).Grade, chain.LegAt(run.Stretch.ToNm).Grade,
            Turn(line.Site, run.Stretch.FromNm), Turn(line.Site, run.Stretch.ToNm));
    }
}
