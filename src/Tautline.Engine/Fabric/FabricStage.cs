using Tautline.Engine.Layout;
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
    /// <summary>Length of one brace rail at an end: its bay less half of each post.</summary>
    public long BraceBayNm(Chain chain, int end) => end == 0
        ? chain.Along(Run.Stations[1]) - chain.Along(Run.Stations[0])
        : chain.Along(Run.Stations[^1]) - chain.Along(Run.Stations[^2]);
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
        return new HungLine(line, [.. line.Runs.Select(r => Hang(r, line, byStation))]);
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
