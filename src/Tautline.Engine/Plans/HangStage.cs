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
        CheckSeats(lines, hung, problems);
        return [.. lines.Select((l, i) => l with { Runs = [.. l.Runs.Select((r, at) => r with { Hang = Of(job, r, hung[i].Runs[at], hung[i]) })] })];
    }

    private static RunHang Of(Job job, RunPlan run, HungRun hung, HungLine line)
    {
        var note = job.Hangs.FirstOrDefault(n => Holds(n, hung, line));
        var (spec, rules) = (hung.Run.Spec, hung.Run.Spec.Rules);
        var (method, reason) = Method(note, run, hung, line);
        var forward = note?.Direction != "back";
        var longest = method == HangMethod.Machine ? rules.HangPullMax.Length : Length.Min(rules.HangHandMax.Length, rules.HangPullMax.Length);
        return new RunHang(
            method, reason, forward, forward ? run.FromPost : run.ToPost, Pulls(run, hung, line, longest, forward), rules.RollTail.Length,
            method == HangMethod.Machine ? null : forward ? run.ToPost : run.FromPost,
            spec.Width > rules["hang.onePuller"].Length ? 2 : 1, method == HangMethod.Short ? null : spec.Width * rules["hang.barShare"].Value);
    }

    private static (HangMethod Method, HangReason Reason) Method(HangNote? note, RunPlan run, HungRun hung, HungLine line)
    {
        var rules = hung.Run.Spec.Rules;
        if (note?.Method is "machine") return (HangMethod.Machine, HangReason.Stated);
        if (note?.Method is "hand") return (HangMethod.Hand, HangReason.Stated);
        if (run.Fabric <= rules["hang.shortMax"].Length) return (HangMethod.Short, HangReason.Short);
        if (run.Fabric <= rules.HangHandMax.Length) return (HangMethod.Hand, HangReason.Short);
        if (IsWet(hung, line)) return (HangMethod.Hand, HangReason.Wet);
        return Steepest(hung, line) > rules["hang.machineGrade"].Value ? (HangMethod.Hand, HangReason.Steep) : (HangMethod.Machine, HangReason.Long);
    }

    private static bool IsWet(HungRun hung, HungLine line)
        => line.Site.Grounds.Any(s => s.Obstacle.Kind == Obstacle.Wet && s.FromNm < hung.Run.Stretch.ToNm && s.ToNm > hung.Run.Stretch.FromNm);

    private static double Steepest(HungRun hung, HungLine line)
        => Enumerable.Range(hung.From, hung.Run.Bays + 1).Max(p => Math.Abs(line.Posts[p % line.Posts.Count].Grade));

    /// <summary>Where the fabric cannot sit as it should on the posts as they are planned; told once a spec.</summary>
    private static void CheckSeats(IReadOnlyList<LinePlan> lines, IReadOnlyList<HungLine> hung, ProblemList problems)
    {
        HashSet<SpecId> told = [];
        for (var l = 0; l < lines.Count; l++)
            for (var r = 0; r < lines[l].Runs.Count; r++)
            {
                var spec = hung[l].Runs[r].Run.Spec;
                var seat = HangCards.Seat(lines[l], hung[l], r);
                var place = new Place($"specs[{spec.Index}]", lines[l].Id, Length.FromNanometres(hung[l].Runs[r].Run.Stretch.FromNm));
                if (seat is { WireHighEnough: false, WireAtMost: { } most } && told.Add(spec.Spec.Id)) problems.Add(ProblemCode.SeatWire, place, seat.TopOver.High, most);
                if (seat.CapOffset.High < Length.Zero && told.Add(spec.Spec.Id)) problems.Add(ProblemCode.SeatPost, place, -1 * seat.CapOffset.High);
            }
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
        Site.SpecStage.Choice(job.HangOrder, "hangOrder", problems, "listed", "free");
        for (var i = 0; i < job.Hangs.Count; i++)
        {
            var note = job.Hangs[i];
            Site.SpecStage.Choice(note.Direction, $"hangs[{i}].direction", problems, "forward", "back");
            Site.SpecStage.Choice(note.Method, $"hangs[{i}].method", problems, "machine", "hand");
            if (hung.Count > 0 && !hung.Any(l => l.Runs.Any(r => Holds(note, r, l)))) problems.Add(ProblemCode.HangPlace, new($"hangs[{i}]"), note.Id.Value);
        }
    }
}
