using System.Globalization;
using System.Text.RegularExpressions;
using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Tests.Checks;

/// <summary>
/// Answers the items of docs/checks/first-light.md off a plan, in the words of that page. It only looks figures up and writes
/// them in the page's unit; nothing is worked out here but counts and sums of what the plan lists.
/// </summary>
internal sealed partial class HandCount(Plan plan)
{
    private LinePlan Line => plan.Lines[0];

    private List<PostPlan> Terminals => [.. Line.Posts.Where(p => p.Kind != PostKind.Line)];

    public string? Answer(string item)
        => NumberedRun().Match(item) is { Success: true } run ? OfRun(Line.Runs[int.Parse(run.Groups[1].Value, CultureInfo.InvariantCulture) - 1], run.Groups[2].Value)
            : NumberedTerminal().Match(item) is { Success: true } t ? OfTerminal(Terminals[int.Parse(t.Groups[1].Value, CultureInfo.InvariantCulture) - 1], t.Groups[2].Value)
            : OfJob(item);

    private static string? OfTerminal(PostPlan post, string item) => item switch
    {
        "station" => Inches(post.Station),
        "kind" => post.Kind.ToString().ToLowerInvariant(),
        "post cut length" => Inches(post.CutLength),
        _ => null,
    };

    private string? OfRun(RunPlan run, string item) => item switch
    {
        "length" => Inches(run.Along),
        "bays" => Number(run.Bays),
        "bay" or "bay along the fence" => Inches(run.LargestBay),
        "bay level" => Inches(InnerPosts(run).First().Station - Line.Posts[run.FromPost].Station),
        "line posts" => Number(InnerPosts(run).Count()),
        "line post stations" => string.Join(' ', InnerPosts(run).Select(p => Inches(p.Station))),
        "line post cut length" => Inches(InnerPosts(run).First().CutLength),
        "top rail" => Inches(run.Rail),
        "rail pieces" => Number(run.RailPieces),
        "rail end piece" => Inches(run.Rail - Length.FromFeet(21) * (run.RailPieces - 1)),
        "bottom wire" => Inches(run.Wire),
        "fabric" => Inches(run.Fabric),
        "pickets" => run.PicketsLow == run.PicketsHigh ? Number(run.PicketsLow) : $"{run.PicketsLow} to {run.PicketsHigh}",
        "rail ties" => Number(run.RailTies),
        "plumb height" => Inches(InnerPosts(run).First().AboveGround + Length.FromInches(2)),
        "mismatch" => Inches(run.Finish.Mismatch),
        "start columns" => Number(run.Start.Columns),
        "end columns" => Number(run.Finish.Columns),
        "start crossings" => Numbers(run.Start.Crossings),
        "end crossings" => Numbers(run.Finish.Crossings),
        "start long edge" => Edge(run.Start.LongEdge),
        "end long edge" => Edge(run.Finish.LongEdge),
        "square roll" => Inches(run.RollTake),
        _ => null,
    };

    private string? OfJob(string item) => item switch
    {
        "line length" => Inches(Line.Level),
        "terminals" => Number(Terminals.Count),
        "end posts" => Kinds(PostKind.End),
        "corner posts" => Kinds(PostKind.Corner),
        "gate posts" => Kinds(PostKind.Gate),
        "line posts" => Kinds(PostKind.Line),
        "bays" => Number(Line.Runs.Sum(r => r.Bays)),
        "run lengths total" => Inches(new Length(Line.Runs.Sum(r => r.Along.Metres))),
        "hole depth" => One(p => true, p => p.HoleDepth),
        "line hole diameter" => One(IsLine, p => p.HoleDiameter),
        "terminal hole diameter" => One(IsTerminal, p => p.HoleDiameter),
        "line holes 10 in" => Holes(PostKind.Line, 10),
        "terminal holes 12 in" => Number(Line.Posts.Count(p => IsTerminal(p) && Same(p.HoleDiameter, 12))),
        "concrete per line hole" => Cubic(Line.Posts.First(IsLine).Concrete.CubicFeet),
        "concrete per terminal hole" => Cubic(Line.Posts.First(IsTerminal).Concrete.CubicFeet),
        "concrete line holes" => Cubic(Concrete(PostKind.Line)),
        "concrete corner holes" => Cubic(Concrete(PostKind.Corner)),
        "concrete gate holes" => Cubic(Concrete(PostKind.Gate)),
        "concrete total" => Cubic(new Volume(Item("concrete-bag").Net).CubicFeet),
        "bags per line hole" => Number(Line.Posts.First(IsLine).Bags),
        "bags per terminal hole" => Number(Line.Posts.First(IsTerminal).Bags),
        "bags by whole hole" => Number(Item("concrete-bag").Purchase),
        "bags by total" => Number(Item("concrete-bag").BagsByTotal!.Value),
        "top rail total" => Inches(new Length(Item("rail").Net)),
        "rail pieces" => Number(Line.Runs.Sum(r => r.RailPieces)),
        "sleeves" => Each("sleeve"),
        "rail sticks" => Number(Item("rail").Purchase),
        "bottom wire total" => Inches(new Length(Item("tension-wire").Net)),
        "wire coils" => Number(Item("tension-wire").Purchase),
        "fabric total" => Inches(new Length(Item("fabric").Net)),
        "pickets total" => Number(Line.Runs.Sum(r => r.PicketsHigh)),
        "rail ties" => Each("rail-tie"),
        "rings" => Each("ring"),
        "rail tie spacing" => Inches(plan.Specs[0].TieSpace),
        "post ties" => Each("post-tie"),
        "tension bars" => Each("tension-bar"),
        "tension bar length" => Inches(Item("tension-bar").Size!.Value),
        "tension bands" => Each("tension-band"),
        "band positions" => Numbers(plan.Specs[0].Bands.Diamonds),
        "rail ends" => Each("rail-end"),
        "brace bands" => Each("brace-band"),
        "carriage bolts" => Each("carriage-bolt"),
        "dome caps" => Each("dome-cap"),
        "loop caps" => Each("loop-cap"),
        "braced panels" => Each("truss-rod"),
        "rolls" => Number(Item("fabric").Purchase),
        "roll tail" => Inches(Item("fabric").Left!.Value),
        "roll tail warning" => plan.Problems.Any(p => p.Code == ProblemCode.RollTail) ? "yes" : "no",
        "walk gate leaves" => Number(Line.Gates.Where(g => g.Kind == Site.GateKind.Walk).Sum(g => g.Leaves)),
        "double gate leaves" => Number(Line.Gates.Where(g => g.Kind == Site.GateKind.Double).Sum(g => g.Leaves)),
        "walk gate leaf width" => Inches(Gate(Site.GateKind.Walk).Leaf),
        "double gate leaf width" => Inches(Gate(Site.GateKind.Double).Leaf),
        "walk gate post diameter" => Inches(Some.Catalog.FindSection(Gate(Site.GateKind.Walk).Post)!.OutsideDiameter),
        "double gate post diameter" => Inches(Some.Catalog.FindSection(Gate(Site.GateKind.Double).Post)!.OutsideDiameter),
        "walk gate centres apart" => Inches(Gate(Site.GateKind.Walk).Centres),
        "double gate centres apart" => Inches(Gate(Site.GateKind.Double).Centres),
        "hinge sets" => Each("hinge-set"),
        "fork latches" => Each("fork-latch"),
        "centre latches" => Each("double-latch"),
        "drop rods" => Each("drop-rod"),
        "keepers" => Each("keeper"),
        "rail pipe weight by cut length" => Weight(Item("rail").Mass!.Value),
        "line pipe weight by cut length" => Weight(Mass(IsLine)),
        "end pipe weight by cut length" or "terminal pipe weight by cut length" => Weight(Mass(IsTerminal)),
        "corner pipe weight by cut length" => Weight(Mass(p => p.Kind == PostKind.Corner)),
        "gate pipe weight by cut length" => Weight(Mass(p => p.Kind == PostKind.Gate)),
        "pipe weight by cut length" => Weight(new Mass(plan.Takeoff.Where(t => t.Part is "post" or "rail").Sum(t => t.Mass?.Kilograms ?? 0))),
        "terminal kinds" => string.Join(' ', Terminals.Select(t => t.Kind.ToString().ToLowerInvariant())),
        "terminal stations" => string.Join(' ', Terminals.Select(t => Inches(t.Station))),
        "slope length" => Shown(Line.Along.Feet),
        "bay along the fence" => OfRun(Line.Runs[0], "bay along the fence"),
        "bay level" => OfRun(Line.Runs[0], "bay level"),
        "plumb height" => OfRun(Line.Runs[0], "plumb height"),
        "mismatch" => OfRun(Line.Runs[0], "mismatch"),
        "columns" => Number(Line.Runs[0].Finish.Columns),
        "crossings" => Number(Line.Runs[0].Finish.Crossings.Count),
        "crossing rows" => Numbers(Line.Runs[0].Finish.Crossings),
        "long edge at top end" => Edge(Line.Runs[0].Finish.LongEdge),
        "long edge at low end" => Edge(Line.Runs[0].Start.LongEdge),
        "fabric" => Inches(Line.Runs[0].Fabric),
        "pickets" => OfRun(Line.Runs[0], "pickets"),
        "square roll" => Inches(Line.Runs[0].RollTake),
        _ => OfPosts(item),
    };

    /// <summary>'corner post order length' and the like.</summary>
    private string? OfPosts(string item)
    {
        var match = PostLength().Match(item);
        if (!match.Success) return null;
        var posts = Line.Posts.Where(p => match.Groups[1].Value switch
        {
            "terminal" => IsTerminal(p),
            var kind => p.Kind.ToString().Equals(kind, StringComparison.OrdinalIgnoreCase),
        }).ToList();
        var lengths = posts.Select(p => match.Groups[2].Value == "cut" ? p.CutLength : p.OrderLength).Select(Inches).Distinct().ToList();
        return lengths.Count == 1 ? lengths[0] : string.Join(' ', lengths);
    }

    private IEnumerable<PostPlan> InnerPosts(RunPlan run)
    {
        var to = run.ToPost == 0 ? Line.Posts.Count : run.ToPost;
        for (var i = run.FromPost + 1; i < to; i++) yield return Line.Posts[i];
    }

    private GatePlan Gate(Site.GateKind kind) => Line.Gates.Single(g => g.Kind == kind);

    private TakeoffLine Item(string part) => plan.Takeoff.Single(t => t.Part == part);

    private string Each(string part) => Number(plan.Takeoff.Where(t => t.Part == part).Sum(t => t.Purchase));

    private string Kinds(PostKind kind) => Number(Line.Posts.Count(p => p.Kind == kind));

    private string Holes(PostKind kind, double inches) => Number(Line.Posts.Count(p => p.Kind == kind && Same(p.HoleDiameter, inches)));

    private double Concrete(PostKind kind) => Line.Posts.Where(p => p.Kind == kind).Sum(p => p.Concrete.CubicFeet);

    private Mass Mass(Func<PostPlan, bool> which) => new(Line.Posts.Where(which).Sum(p => p.Mass.Kilograms));

    private string One(Func<PostPlan, bool> which, Func<PostPlan, Length> what)
        => string.Join(' ', Line.Posts.Where(which).Select(what).Select(Inches).Distinct());

    private static bool IsLine(PostPlan post) => post.Kind == PostKind.Line;

    private static bool IsTerminal(PostPlan post) => post.Kind != PostKind.Line;

    private static bool Same(Length length, double inches) => length.Nanometres == Length.FromInches(inches).Nanometres;

    private static string Edge(LongEdge edge) => edge.ToString().ToLowerInvariant();

    private static string Inches(Length length) => Shown(length.Inches);

    private static string Cubic(double feet) => Shown(feet);

    private static string Weight(Mass mass) => Shown(mass.Pounds);

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Numbers(IEnumerable<double> numbers) => string.Join(' ', numbers.Select(Shown));

    private static string Shown(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^run (\d+) (.+)$")]
    private static partial Regex NumberedRun();

    [GeneratedRegex(@"^terminal (\d+) (.+)$")]
    private static partial Regex NumberedTerminal();

    [GeneratedRegex(@"^(\w+) post (cut|order) length$")]
    private static partial Regex PostLength();
}
