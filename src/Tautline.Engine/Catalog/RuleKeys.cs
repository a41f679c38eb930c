using static Tautline.Engine.Catalog.RuleUnit;
using static Tautline.Engine.Catalog.RuleUse;

namespace Tautline.Engine.Catalog;

/// <summary>Every limit there is, by key. A rule file or a job that names another is told so.</summary>
public static class RuleKeys
{
    private static readonly Dictionary<string, RuleKey> byKey = Rows().ToDictionary(k => k.Key, StringComparer.Ordinal);

    /// <summary>In order of key.</summary>
    public static IReadOnlyList<RuleKey> All { get; } = [.. byKey.Values.OrderBy(k => k.Key, StringComparer.Ordinal)];

    public static RuleKey? Find(string key) => byKey.GetValueOrDefault(key);

    private static IEnumerable<RuleKey> Rows() =>
    [
        // layout
        new("bay.max", Length, "largest bay, along the fence", Needed),
        new("bay.tolerance", Length, "by how much a bay may pass the limit", Needed),
        new("bay.min", Length, "smallest bay", Needed),
        new("bay.curve", Length, "largest bay on a curve; without it that of a straight line", Optional, "radius"),
        new("run.max", Length, "longest stretch between terminals", Needed),
        new("run.maxWithoutRail", Length, "the same for a fence without a top rail; without it run.max", Optional),
        new("terminal.turn", Angle, "a larger turn takes a corner post", Needed),
        new("terminal.gradeChange", Slope, "a larger change of grade takes a terminal", Needed),
        new("line.encaseTurn", Angle, "a larger turn has its line post set in concrete", Recorded),

        // holes and posts
        new("hole.timesPost", Number, "hole over post diameter", Needed),
        new("hole.timesLargePost", Number, "hole over post diameter, large posts", Needed),
        new("hole.largePost", Length, "a larger post is large", Needed),
        new("hole.depth", Length, "depth of a hole for a low fence", Needed),
        new("hole.depthPerHeight", Number, "depth more for each length of fence above", Needed),
        new("hole.depthFrom", Length, "height of a low fence", Needed),
        new("hole.lineDiameterMin", Length, "least hole of a line post; without it the multiple of the post alone", Optional, MayBeZero: true),
        new("hole.terminalDiameterMin", Length, "least hole of any other post; without it the multiple of the post alone", Optional, MayBeZero: true),
        new("hole.lineDepthMin", Length, "least depth of a line post's hole; without it the depth by height alone", Optional, MayBeZero: true),
        new("hole.terminalDepthMin", Length, "least depth of any other hole; without it the depth by height alone", Optional, MayBeZero: true),
        new("hole.concreteBelow", Length, "concrete under the foot of a post; without it the post stands on the ground of the hole", Optional, MayBeZero: true),
        new("post.terminalAbove", Length, "top of a terminal over the fabric", Needed),
        new("post.lineBelow", Length, "top of a line post under the fabric's height", Needed),
        new("post.orderStep", Length, "steps in which posts are ordered", Needed),
        new("post.lengthClasses", Count, "most different lengths in which posts of one section are bought; without it each in its next step", Optional),
        new("post.lineSize", Length, "diameter of a line post the spec does not name; without it the catalogue's", Optional, "fence height"),
        new("post.terminalSize", Length, "diameter of a terminal the spec does not name; without it the catalogue's", Optional, "fence height"),
        new("post.plumb", Angle, "a post may lean by", Recorded),
        new("rock.coreOver", Length, "core in rock wider than the post by", Needed),
        new("rock.coreDepth", Length, "depth of a core in rock", Needed),
        new("driven.depth", Length, "depth of a driven line post", Needed),
        new("spoil.swell", Number, "loosened over lying ground", Needed),
        new("grout.yield", Volume, "grout of a bag", Needed),
        new("cure.days", Days, "concrete cures before anything hangs on the posts", Recorded),
        new("bag.yield", Volume, "concrete of a bag", Needed),

        // rails, wires, fabric
        new("rail.size", Length, "diameter of a rail the spec does not name; without it the catalogue's", Optional),
        new("rail.stick", Length, "length of a stick of rail", Needed),
        new("removal.postSpacing", Length, "space of old posts that the job does not count", Needed),
        new("removal.footing", Volume, "old concrete that comes out with a post", Needed),
        new("concrete.overBreak", Number, "share of concrete over hole minus post", Needed, MayBeZero: true),
        new("anchor.edge", Length, "concrete between an anchor or core and the edge of a wall", Needed),
        new("bracket.perPost", Count, "brackets that hold a post to the face of a wall", Needed),
        new("bracket.anchors", Count, "anchors of a bracket", Needed),
        new("bracket.depth", Length, "from a wall's top down its face to the lowest bracket", Needed),
        new("wire.coil", Length, "length of a coil of tension wire", Needed),
        new("wire.wrap", Length, "tension wire wrapped at each end", Needed),
        new("wire.topBelow", Length, "top tension wire at most so far under the top of the fabric", Recorded),
        new("bar.offFace", Length, "tension bar from the post's face", Needed),
        new("bar.shorter", Length, "tension bar under the fabric's height", Needed),
        new("roll.length", Length, "length of a roll", Needed),
        new("roll.tail", Length, "fabric wanted past the last terminal", Needed),
        new("mesh.advanceHigh", Length, "largest advance of a picket", Needed),
        new("mesh.squeezeMin", Length, "gap left at an interlock when two wires of hung fabric are pinched: less is bar-tight", Recorded),
        new("mesh.squeezeMax", Length, "the same: more is slack", Recorded),
        new("seat.twistTail", Length, "a twisted selvage stands over its diamond by", Recorded),
        new("hang.handMax", Length, "longest fabric stretched by hand", Needed),
        new("hang.pullMax", Length, "longest stretch pulled in one go", Needed),
        new("hang.machineGrade", Slope, "ground as steep as a stretching machine works on", Needed),
        new("hang.onePuller", Length, "tallest fabric that one puller takes", Needed),
        new("hang.barShare", Number, "width of the pull bar as a share of the fabric's height", Needed),
        new("hang.shortMax", Length, "longest fabric that a short puller takes by itself", Needed),
        new("hang.leastPiece", Length, "a shorter end of a roll is scrap", Needed),
        new("gap.min", Length, "least gap under the fabric", Needed, MayBeZero: true),
        new("gap.max", Length, "largest gap under the fabric", Needed),
        new("rail.rakeMax", Slope, "steepest rail over measured ground", Needed),
        new("grading.width", Length, "width over which ground under the fabric is cut or filled", Needed),
        new("grading.breakOver", Length, "where ground would be graded deeper a sharp break takes a terminal instead", Needed),

        new("screen.tie", Length, "space of ties on a long edge of a screen", Needed),
        new("spare.small", Number, "share of ties, rings and bolts bought over the count", Needed, MayBeZero: true),
        new("temporary.panel", Length, "length of a panel of temporary fence", Needed),
        new("temporary.ballast", Number, "bags of ballast on each stand of temporary fence", Needed, MayBeZero: true),

        // barbed wire
        new("barb.height", Length, "height of the barb over the fabric", Needed),
        new("barb.reach", Length, "outer strand from the fence, arms that lean", Needed),
        new("barb.tail", Length, "barbed wire for each strand at each end of a run", Needed),
        new("barb.spool", Length, "length of a spool of barbed wire", Needed),

        // fastenings
        new("band.endDistance", Length, "last band from the bar's end", Needed),
        new("band.width", Length, "width of a tension or brace band", Recorded),
        new("band.max", Length, "largest space of tension bands", Needed),
        new("tie.postMax", Length, "largest space of ties on a line post", Needed),
        new("tie.railMax", Length, "largest space of ties on a rail", Needed),
        new("ring.max", Length, "largest space of rings on a tension wire", Needed),

        // braces
        new("brace.height", Length, "terminals of a higher fence are braced, of a lower one with a top rail not", Needed, MayBeZero: true),
        new("brace.atHeight", YesNo, "whether a fence of exactly that height is braced; without it the job must say", Optional, MayBeZero: true),
        new("brace.doubleHeight", Length, "a fence so high takes a centre brace or two truss rods", Recorded),
        new("brace.lineInterval", Length, "line posts are braced both ways at least every", Recorded),
        new("brace.rodSlope", Angle, "a truss rod rises at most by", Recorded),

        // gates
        new("gate.cantileverPost", Length, "roller and latch posts of a cantilever gate", Needed),
        new("gate.cantileverTail", Number, "tail of a cantilever leaf at least so much of its opening", Needed, MayBeZero: true),
        new("gate.cantileverOverhang", Length, "tail of a cantilever leaf at least; without it its share of the opening alone", Optional, "opening", MayBeZero: true),
        new("gate.rollingOver", Length, "rolling leaf over its opening", Needed),
        new("gate.singleDeduct", Length, "opening less a single leaf", Needed),
        new("gate.doubleDeduct", Length, "opening less both leaves", Needed),
        new("gate.postSize", Length, "diameter of a gate post; without it the catalogue's", Optional, "leaf"),
        new("gate.postSizeFence", Length, "gate.postSize holds for fences up to this height; without it for all", Optional),

        // grounding: for the electrical engineer
        new("ground.interval", Length, "grounds at most so far apart, where grounding is asked for", Recorded),
        new("ground.turn", Angle, "a larger turn is grounded, where grounding is asked for", Recorded),
    ];
}
