using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

/// <summary>Settles how every run is hung: direction, method, and where its pulls end.</summary>
internal static class HangStage
{
    /// <summary>The same lines with their runs' hang.</summary>
    public static IReadOnlyList<LinePlan> Of(Job job, IReadOnlyList<LinePlan> lines, IReadOnlyList<HungLine> hung, ProblemList problems)
    {
        CheckNotes(job, hung, problems);
        return [.. lines.Select((l, i) => l with { Runs = [.. l.Runs.Select((r, at) => r with { Hang = Of(job, r, hung[i].Runs[at], hung[i]) })] })];
    }

    private static RunHang Of(Job job, RunPlan run, HungRun hung, HungLine line)
    {
        var note = job.Hangs.FirstOrDefault(n => Holds(n, hung, line));
        var rules = hung.Run.Spec.Rules;
        var method = note?.Method switch
        {
            "machine" => HangMethod.Machine,
            "hand" => HangMethod.Hand,
            _ => run.Fabric > rules.HangHandMax.Length ? HangMethod.Machine : HangMethod.Hand,
        };
        var forward = note?.Direction != "back";
        var longest = method == HangMethod.Machine ? rules.HangPullMax.Length : Length.Min(rules.HangHandMax.Length, rules.HangPullMax.Length);
        return new RunHang(method, forward, forward ? run.FromPost : run.ToPost, Pulls(run, hung, line, longest, forward), rules.RollTail.Length);
    }

    /// <summary>As few stretches as the longest allows, as even as the posts let them be.</summary>
    private static List<PullPlan> Pulls(RunPlan run, HungRun hung, HungLine line, Length longest, bool forward)
    {
        var bays = run.Bays;
        var parts = (int)Math.Min(bays, Math.Max(1, (run.Fabric.Nanometres - 1) / longest.Nanometres + 1));
        List<PullPlan> pulls = [];
        for (var i = 0; i < parts; i++)
        {
            var (from, to) = (bays * i / parts, bays * (i + 1) / parts);
            var fabric = run.Fabric * (Along(hung, line, to) - Along(hung, line, from)) / (double)Along(hung, line, bays);
            pulls.Add(forward ? new(Post(run, line, from), Post(run, line, to), fabric) : new(Post(run, line, to), Post(run, line, from), fabric));
        }
        if (!forward) pulls.Reverse();
        return pulls;
    }

    private static long Along(HungRun hung, HungLine line, int bay)
        => line.Site.Chain.Along(hung.Run.Stations[bay]) - line.Site.Chain.Along(hung.Run.Stations[0]);

    /// <summary>Index of a post of the run; the last of a closed line is its first.</summary>
    private static int Post(RunPlan run, HungLine line, int number) => number == run.Bays ? run.ToPost : (run.FromPost + number) % line.Posts.Count;

    private static bool Holds(HangNote note, HungRun hung, HungLine line)
        => Station(note, line) is { } at && at >= hung.Run.Stretch.FromNm && at < hung.Run.Stretch.ToNm;

    private static long? Station(HangNote note, HungLine line)
        => line.Site.Chain.Legs.FirstOrDefault(l => l.Leg?.Id == note.Leg) is { } leg && note.At.Metres >= 0 && note.At.Nanometres <= leg.LevelNm
            ? leg.StartNm + note.At.Nanometres
            : null;

    private static void CheckNotes(Job job, IReadOnlyList<HungLine> hung, ProblemList problems)
    {
        for (var i = 0; i < job.Hangs.Count; i++)
        {
            var note = job.Hangs[i];
            Site.SpecStage.Choice(note.Direction, $"hangs[{i}].direction", problems, "forward", "back");
            Site.SpecStage.Choice(note.Method, $"hangs[{i}].method", problems, "machine", "hand");
            if (hung.Count > 0 && !hung.Any(l => l.Runs.Any(r => Holds(note, r, l)))) problems.Add(ProblemCode.HangPlace, new($"hangs[{i}]"), note.Id.Value);
        }
    }
}
