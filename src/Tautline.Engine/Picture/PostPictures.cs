using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Picture;

/// <summary>Posts, runs, bays, pulls and rolls, as flat arrays or few.</summary>
internal sealed class PostPictures
{
    private readonly PictureTrace trace;
    private readonly List<double> at = [];
    private readonly List<int> kinds = [], runs = [], bays = [];
    private readonly List<PullPicture> pulls = [];
    private readonly Dictionary<string, int> runOf = new(StringComparer.Ordinal);

    private PostPictures(PictureTrace trace) => this.trace = trace;

    public ReadOnlyMemory<double> At => at.ToArray();

    public ReadOnlyMemory<int> Kinds => kinds.ToArray();

    public ReadOnlyMemory<int> Runs => runs.ToArray();

    public ReadOnlyMemory<int> Bays => bays.ToArray();

    public IReadOnlyList<PullPicture> Pulls => pulls;

    public IReadOnlyList<DropPicture> Drops { get; private set; } = [];

    public static PostPictures Of(PictureTrace trace)
    {
        var made = new PostPictures(trace);
        for (var line = 0; line < trace.Shapes.Count; line++)
            if (trace.Planned[line] is >= 0 and var plan) made.Add(line, trace.Plan.Lines[plan]);
        made.Drops = [.. made.DropsOf()];
        return made;
    }

    private void Add(int line, LinePlan plan)
    {
        var first = kinds.Count;
        foreach (var post in plan.Posts)
        {
            at.Add(post.East.Metres);
            at.Add(post.North.Metres);
            kinds.Add((int)post.Kind);
        }
        for (var r = 0; r < plan.Runs.Count; r++)
        {
            var (run, index) = (plan.Runs[r], runs.Count / 4);
            runs.AddRange([line, r, first + run.FromPost, first + run.ToPost]);
            for (var bay = 0; bay < run.Bays; bay++)
                bays.AddRange([index, first + run.FromPost + bay, bay == run.Bays - 1 ? first + run.ToPost : first + run.FromPost + bay + 1]);
            for (var width = 0; width < 4; width++) runOf[RollFeeds.PullId(plan, run, width)] = index;
            foreach (var pull in run.Hang.Pulls)
                pulls.Add(new(index, pulls.Count + 1, [.. Point(first + pull.From), .. Point(first + pull.To)]));
        }
    }

    private double[] Point(int post) => [at[2 * post], at[2 * post + 1]];

    /// <summary>Rolls that are laid down at one place are one drop.</summary>
    private IEnumerable<DropPicture> DropsOf()
    {
        if (trace.Plan.Rolls is not { } rolls) yield break;
        foreach (var drop in rolls.Rolls.GroupBy(r => (r.FirstPull, r.Drop)))
        {
            if (!runOf.TryGetValue(drop.Key.FirstPull, out var run)) continue;
            var line = runs[4 * run];
            var middle = drop.Key.Drop.Low + (drop.Key.Drop.High - drop.Key.Drop.Low) / 2;
            var point = trace.Shapes[line].Point(Math.Clamp(middle, 0, trace.Shapes[line].LevelNm));
            yield return new(run, drop.Count(), drop.Key.Drop.IsExact && drop.All(r => r.Certain), point.East.Metres, point.North.Metres);
        }
    }
}
