using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Picture;

/// <summary>Makes the picture of a line from its side.</summary>
public static class ProfileStage
{
    /// <param name="line">Index in the plan, which has no errors.</param>
    public static ProfilePicture Of(Plan plan, int line, UnitSystem? units = null)
    {
        var (planned, hung) = (plan.Lines[line], plan.Basis.Lines[line]);
        var ground = GroundOf(hung.Site.Chain);
        var words = new PlanWords(units ?? plan.Basis.Job.Units);
        return new ProfilePicture
        {
            Line = planned.Id,
            Index = line,
            Length = planned.Level.Metres,
            Measured = hung.Site.Chain.Ground is not null,
            Ground = ground,
            Posts = [.. planned.Posts.Select((p, i) => Post(p, i, ground))],
            Bays = Bays(planned, hung, ground),
            Gates = [.. planned.Gates.Select((g, i) => Gate(planned, g, i, ground, words))],
            Grading = [.. planned.Grading.Select((g, i) => new ProfileStretch(i, g.TooHigh, words.Grading(g), g.From.Metres, g.To.Metres))],
            Pulls = [.. planned.Runs.SelectMany((r, i) => PullsOf(planned, r, i))],
            Splices = [.. planned.Runs.SelectMany((r, i) => Splices(plan, planned, r, i))],
            Drops = [.. Drops(plan, planned)],
            Problems = [.. Problems(plan, planned)],
        };
    }

    /// <summary>Height of the ground at a station, straight between its corners.</summary>
    public static double HeightAt(ReadOnlySpan<double> ground, double station)
    {
        if (ground.Length == 0) return 0;
        var (low, high) = (0, ground.Length / 2 - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (ground[2 * middle] <= station) low = middle;
            else high = middle;
        }
        var (from, to) = (ground[2 * low], ground[2 * high]);
        var share = to > from ? Math.Clamp((station - from) / (to - from), 0, 1) : 0;
        return ground[2 * low + 1] + (ground[2 * high + 1] - ground[2 * low + 1]) * share;
    }

    private static double[] GroundOf(Chain chain)
    {
        if (chain.Ground is { } measured) return [.. measured.Vertices.SelectMany(v => new[] { v.Station, v.Height })];
        List<double> corners = [0, 0];
        foreach (var leg in chain.Legs) corners.AddRange([leg.EndNm * 1e-9, corners[^1] + leg.Grade * leg.LevelNm * 1e-9]);
        return [.. corners];
    }

    private static ProfilePost Post(PostPlan post, int index, double[] ground)
    {
        var height = post.GroundHeight?.Metres ?? HeightAt(ground, post.Station.Metres);
        var top = post.TopHeight?.Metres ?? height + post.AboveGround.Metres;
        var hole = post.Support is Support.Concrete or Support.Cored ? post.HoleDiameter.Metres : 0;
        return new(index, post.Kind, post.Station.Metres, height, top, height - post.HoleDepth.Metres, hole);
    }

    private static List<ProfileBay> Bays(LinePlan planned, HungLine hung, double[] ground)
    {
        List<ProfileBay> bays = [];
        for (var r = 0; r < planned.Runs.Count; r++)
        {
            var (run, stations) = (planned.Runs[r], hung.Runs[r].Run.Stations);
            for (var b = 0; b < run.Bays; b++)
                bays.Add(run.Fitted.Count > 0
                    ? new(r, run.FromPost + b, run.Fitted[b].From.Metres, run.Fitted[b].To.Metres, run.Fitted[b].Top.Metres, run.Fitted[b].TopTo.Metres, run.Fitted[b].Plumb.Metres)
                    : OnGrade(r, run.FromPost + b, stations[b] * 1e-9, stations[b + 1] * 1e-9, hung.Runs[r].Run.Spec, ground));
        }
        return bays;
    }

    /// <summary>A bay that lies on the grade of its leg.</summary>
    private static ProfileBay OnGrade(int run, int post, double from, double to, ResolvedSpec spec, double[] ground)
    {
        var (low, high) = (HeightAt(ground, from), HeightAt(ground, to));
        var plumb = PostFormulas.Plumb<Plain>(spec.Height.Metres, to > from ? (high - low) / (to - from) : 0).Value;
        return new(run, post, from, to, low + plumb, high + plumb, plumb);
    }

    private static ProfileGate Gate(LinePlan line, GatePlan gate, int index, double[] ground, PlanWords words)
    {
        var (from, to) = (gate.NearFace.Metres, gate.NearFace.Metres + gate.Opening.Metres);
        var floor = Math.Max(HeightAt(ground, from), HeightAt(ground, to));
        for (var i = 0; i < ground.Length; i += 2)
            if (ground[i] > from && ground[i] < to) floor = Math.Max(floor, ground[i + 1]);
        var top = new[] { gate.FromPost, gate.ToPost }.Min(p => Post(line.Posts[p], p, ground).Top);
        return new(index, gate.Id, gate.Kind, words.Long(gate.Opening), from, to, floor, Math.Max(top, floor));
    }

    private static IEnumerable<ProfilePull> PullsOf(LinePlan line, RunPlan run, int index)
    {
        // The last post of a closed line is its first again: seen from the side it stands at the end.
        double At(int post) => post == 0 && run.ToPost == 0 && run.FromPost > 0 ? line.Level.Metres : line.Posts[post].Station.Metres;
        return run.Hang.Pulls.Select((p, i) => new ProfilePull(index, i + 1, At(p.From), At(p.To)));
    }

    private static IEnumerable<ProfileMark> Splices(Plan plan, LinePlan line, RunPlan run, int index) =>
        RollFeeds.Of(plan, line, run).SelectMany(f => f.Splices).Select(s => new ProfileMark(index, s.Station.Low * 1e-9, s.Station.High * 1e-9, s.Certain, 1));

    /// <summary>Rolls that are laid down at one place are one drop.</summary>
    private static IEnumerable<ProfileMark> Drops(Plan plan, LinePlan line)
    {
        if (plan.Rolls is not { } rolls) yield break;
        var runs = line.Runs.Select((r, i) => (Key: RollFeeds.PullId(line, r, 0)[..^1], i)).ToDictionary(r => r.Key, r => r.i);
        foreach (var drop in rolls.Rolls.GroupBy(r => (r.FirstPull, r.Drop)))
            if (runs.TryGetValue(drop.Key.FirstPull[..(drop.Key.FirstPull.LastIndexOf('/') + 1)], out var run))
                yield return new(run, drop.Key.Drop.Low * 1e-9, drop.Key.Drop.High * 1e-9, drop.All(r => r.Certain), drop.Count());
    }

    private static IEnumerable<ProfileProblem> Problems(Plan plan, LinePlan line) =>
        plan.Problems.Select((p, i) => (p, i)).Where(p => p.p.Place is { Station: not null } && p.p.Place.Line == line.Id)
            .Select(p => new ProfileProblem(p.i, p.p.Severity, p.p.Place.Station!.Value.Metres));
}
