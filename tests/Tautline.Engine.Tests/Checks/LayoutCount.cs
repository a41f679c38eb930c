using System.Globalization;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Checks;

/// <summary>Answers the items of docs/checks/layout.md that first-light.md does not have; looks figures up and works none out.</summary>
internal sealed class LayoutCount(Plan plan)
{
    private LinePlan Line => plan.Lines[0];

    private List<PostPlan> Terminals => [.. Line.Posts.Where(p => p.Kind != PostKind.Line)];

    public string? Answer(string item) => item switch
    {
        "concrete gate holes" when Slides => Shown(Gates.Sum(p => p.Concrete.CubicFeet) + Roller.Concrete.CubicFeet),
        "gate pipe weight by cut length" when Slides => Shown(Gates.Sum(p => p.Mass.Pounds) + Roller.Mass.Pounds),
        "end pipe weight by cut length" => Shown(Line.Posts.Where(p => p.Kind == PostKind.End).Sum(p => p.Mass.Pounds)),
        "top rail total" => Inches(new Length(Line.Runs.Sum(r => r.Rail.Metres))),
        "terminal hole diameter" => string.Join(' ', Terminals.Where(t => t.Support != Support.Standing).Select(t => Inches(t.HoleDiameter)).Distinct()),
        "terminal 1 post diameter" => Diameter(0),
        "terminal 2 post diameter" => Diameter(1),
        "terminal 3 post diameter" => Diameter(2),
        "terminal 1 hole depth" => Inches(Terminals[0].HoleDepth),
        "terminal 2 hole depth" => Inches(Terminals[1].HoleDepth),
        "terminal posts set" => Number(Terminals.Count(t => t.Support != Support.Standing)),
        "terminal 1 post cut length" => Inches(Terminals[0].CutLength),
        "terminal 2 post cut length" => Inches(Terminals[1].CutLength),
        "terminal post cut length" => Inches(Terminals[0].CutLength),
        "terminal post order length" => Inches(Terminals[0].OrderLength),
        "holes" => Number(Line.Posts.Count(p => p.Concrete.CubicMetres > 0)),
        "posts" => Number(Line.Posts.Count(p => p.Support != Support.Standing) + Line.Gates.Count(g => g.Kind == Site.GateKind.Cantilever)),
        "gate posts" when Line.Gates.Any(g => g.Kind == Site.GateKind.Cantilever) => Number(Line.Posts.Count(p => p.Kind == PostKind.Gate) + 1),
        "spoil" => Shown(new Volume(Item("spoil").Net).CubicFeet),
        "arc start station" => Inches(Line.Posts[12].Station),
        "arc end station" => Inches(Line.Posts[52].Station),
        "arc end east" => Shown(Line.Posts[52].East.Feet),
        "arc end north" => Shown(Line.Posts[52].North.Feet),
        "arc middle east" => Shown(Line.Posts[32].East.Feet),
        "arc middle north" => Shown(Line.Posts[32].North.Feet),
        "line end east" => Shown(Line.Posts[^1].East.Feet),
        "line end north" => Shown(Line.Posts[^1].North.Feet),
        "arc line post 1 station" => Inches(Line.Posts[13].Station),
        "arc line post 2 station" => Inches(Line.Posts[14].Station),
        "arc line post 20 station" => Inches(Line.Posts[32].Station),
        "arc line post 39 station" => Inches(Line.Posts[51].Station),
        "latch post station" => Inches(Line.Posts[Line.Gates[0].FromPost].Station),
        "first roller post station" => Inches(Line.Posts[Line.Gates[0].ToPost].Station),
        "gate tail" => Inches(Line.Gates[0].Tail!.Value),
        "second roller post station" => Inches(Line.Gates[0].SecondRoller!.Value),
        "gate leaf width" => Inches(Line.Gates[0].Leaf),
        "gate centres apart" => Inches(Line.Gates[0].Centres),
        "gate near face" => Inches(Line.Gates[0].NearFace),
        "gate hole diameter" => Inches(Line.Posts[Line.Gates[0].ToPost].HoleDiameter),
        "end hole diameter" => Inches(Line.Posts[0].HoleDiameter),
        "gate post diameter" => Shown(Some.Catalog.FindSection(Line.Gates[0].Post)!.OutsideDiameter.Inches),
        "cantilever leaves" => Each("cantilever-leaf"),
        "roller assemblies" => Each("roller"),
        "latch receivers" => Each("slide-latch"),
        "gate stops" => Each("slide-stop"),
        "dome caps for 2.875" => OfSection("dome-cap", "2.875-sch40"),
        "dome caps for 4.000" => OfSection("dome-cap", "4.000-sch40"),
        "boulevard clamps" => Each("rail-clamp"),
        "truss rods" or "braced panels" => Each("truss-rod"),
        "run 1 middle rail pieces" => Pieces(0),
        "run 2 middle rail pieces" => Pieces(1),
        "brace rails" => Number(Line.Runs.SelectMany(r => r.Ends).Count(e => e.BraceRail.Metres > 0)),
        "fabric total of both widths" => Inches(new Length(Item("fabric").Net)),
        "run 1 fabric of each width" => Inches(Line.Runs[0].Fabric),
        "run 2 fabric of each width" => Inches(Line.Runs[1].Fabric),
        "run 1 pickets of each width" => Number(Line.Runs[0].PicketsHigh),
        "run 2 pickets of each width" => Number(Line.Runs[1].PicketsHigh),
        "lacing rings at the seam" => Each("lacing-ring"),
        "rings on the wire" => Each("ring"),
        "band positions of each width" => string.Join(' ', plan.Specs[0].Bands.Diamonds.Select(Shown)),
        "line arms" => Each("barb-arm-line"),
        "terminal arms" => Each("barb-arm-terminal"),
        "strand before tails" => Shown(new Length(Item("barbed-wire").Net).Feet),
        "spools" => Number(Item("barbed-wire").Purchase),
        "pickets" => Number(Line.Runs.Sum(r => r.PicketsHigh)),
        "run 1 tension bands" => Number(Line.Runs[0].Ends.Sum(e => e.Bands)),
        "run 2 tension bands" => Number(Line.Runs[1].Ends.Sum(e => e.Bands)),
        "tension bands for 2.875" => OfSection("tension-band", "2.875-sch40"),
        "tension bands for 2.375" => OfSection("tension-band", "2.375-sch40"),
        "tension bands for 4.000" => OfSection("tension-band", "4.000-sch40"),
        "brace bands for 2.875" => OfSection("brace-band", "2.875-sch40"),
        "brace bands for 2.375" => OfSection("brace-band", "2.375-sch40"),
        "brace bands for 4.000" => OfSection("brace-band", "4.000-sch40"),
        "rolls of 72 in" => Number(Fabric("high").Purchase),
        "rolls of 48 in" => Number(Fabric("low").Purchase),
        "roll tail of 72 in" => Inches(Fabric("high").Left!.Value),
        "roll tail of 48 in" => Inches(Fabric("low").Left!.Value),
        "tension bar length of the higher side" => Inches(Line.Runs[0].Finish.Bar),
        "tension bar length of the lower side" => Inches(Line.Runs[1].Start.Bar),
        "tension bands of the higher side" => Number(Line.Runs[0].Finish.Bands),
        "tension bands of the lower side" => Number(Line.Runs[1].Start.Bands),
        "post cut length" => Inches(Terminals[1].CutLength),
        "post order length" => Inches(Terminals[1].OrderLength),
        "post hole diameter" => Inches(Terminals[1].HoleDiameter),
        "post hole depth" => Inches(Terminals[1].HoleDepth),
        "post hole concrete" => Shown(Terminals[1].Concrete.CubicFeet),
        "post hole bags" => Number(Terminals[1].Bags),
        "line hole depth of the higher side" => Inches(Line.Posts[1].HoleDepth),
        "line hole depth of the lower side" => Inches(Line.Posts[^2].HoleDepth),
        "line post cut length of the higher side" => Inches(Line.Posts[1].CutLength),
        "line post order length of the higher side" => Inches(Line.Posts[1].OrderLength),
        "line post cut length of the lower side" => Inches(Line.Posts[^2].CutLength),
        "line post order length of the lower side" => Inches(Line.Posts[^2].OrderLength),
        "roll tail warning of 72 in" or "roll tail warning of 48 in" or "rolls of each width" => null,
        _ => null,
    };

    private bool Slides => Line.Gates.Any(g => g.Kind == Site.GateKind.Cantilever);

    private IEnumerable<PostPlan> Gates => Line.Posts.Where(p => p.Kind == PostKind.Gate);

    /// <summary>The second roller post stands off the line and is like the first.</summary>
    private PostPlan Roller => Line.Posts[Line.Gates[0].ToPost];

    private string Diameter(int terminal) => Shown(Some.Catalog.FindSection(Terminals[terminal].Section)!.OutsideDiameter.Inches);

    private string Pieces(int run) => string.Join(' ', Line.Runs[run].BayPieces.Select(Inches));

    private Takeoff.TakeoffLine Item(string part) => plan.Takeoff.Single(t => t.Part == part);

    private Takeoff.TakeoffLine Fabric(string spec) => plan.Takeoff.Single(t => t.Part == "fabric" && t.Spec?.Value == spec);

    private string Each(string part) => Number(plan.Takeoff.Where(t => t.Part == part).Sum(t => t.Purchase));

    private string OfSection(string part, string section) => Number(plan.Takeoff.Where(t => t.Part == part && t.Section == section).Sum(t => t.Purchase));

    private static string Inches(Length length) => Shown(length.Inches);

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Shown(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);
}
