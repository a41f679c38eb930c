using System.Collections.ObjectModel;
using System.Text.Json.Serialization;
using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Plans;

/// <summary>
/// Everything computed from a job. Immutable; screens, papers and exports read figures off it and compute none. While an error
/// stands there are no lines and no take-off.
/// </summary>
/// <param name="Limits">The limits in force that the base set did not give; all others are the base set's.</param>
public sealed record Plan(
    JobId Job, string RuleSet, IReadOnlyList<LimitPlan> Limits, IReadOnlyList<SpecPlan> Specs, IReadOnlyList<LinePlan> Lines, IReadOnlyList<TemporaryPlan> Temporary, IReadOnlyList<TakeoffLine> Takeoff,
    IReadOnlyList<Problem> Problems)
{
    /// <summary>Which roll feeds which run; nothing where no fabric is hung.</summary>
    public RollPlan? Rolls { get; init; }

    /// <summary>What the plan was made from, kept so that a figure can be asked 'why'.</summary>
    [JsonIgnore]
    public Basis Basis { get; init; } = null!; // set by the planner; 'required' would bring it into the JSON contract

    [JsonIgnore]
    public bool HasErrors => Problems.Any(p => p.Severity == Severity.Error);
}

/// <summary>The stages' own records behind a plan.</summary>
public sealed record Basis(Job Job, FenceCatalog Catalog, Rules Rules, IReadOnlyList<ResolvedSpec> Specs, IReadOnlyList<HungLine> Lines)
{
    /// <summary>The few lengths posts are bought in, by the id of their section, where the rules ask for few.</summary>
    public IReadOnlyDictionary<string, Ladder> PostLengths { get; init; } = ReadOnlyDictionary<string, Ladder>.Empty;
}

/// <summary>A spec as planned: what the rules chose, and its mesh.</summary>
/// <param name="Height">Of the fabric in all.</param>
/// <param name="Widths">Equal widths of fabric, one above the other; what follows of bands, ties and mesh is of one width.</param>
/// <param name="AdvanceLow">Least picket advance; equal to the greatest once a roll is calibrated.</param>
/// <param name="TieSpace">Space between rail ties.</param>
/// <param name="RingSpace">Space between rings on the tension wire.</param>
/// <param name="TieEvery">The same in diamonds, as crews count.</param>
/// <param name="RingEvery">The same in diamonds.</param>
/// <param name="Bands">Tension bands on a level end, in diamonds from the top.</param>
/// <param name="Ties">Ties on a line post, in diamonds from the top.</param>
/// <param name="Habit">What crews do instead, where that is known.</param>
/// <param name="HabitOverLimit">True where the habit leaves a space over the limit.</param>
public sealed record SpecPlan(
    SpecId Id, Length Height, int Widths, string LinePost, string TerminalPost, string Rail, bool TopRail, bool BottomWire, bool Braced,
    double Diamonds, Length HalfDiamond, Length AdvanceLow, Length AdvanceHigh, int WholeRows, Length TieSpace, Length RingSpace, int TieEvery, int RingEvery,
    FasteningSet Bands, FasteningSet Ties, FasteningSet? Habit, bool HabitOverLimit);

public sealed record LinePlan(
    LineId Id, string Name, bool Closed, Length Level, Length Along, IReadOnlyList<PostPlan> Posts, IReadOnlyList<RunPlan> Runs,
    IReadOnlyList<GatePlan> Gates, IReadOnlyList<WorkPlan> Works)
{
    /// <summary>Where the measured ground does not suit the fabric, in order of station.</summary>
    public IReadOnlyList<GradingPlan> Grading { get; init; } = [];

    /// <summary>How the top line goes over measured ground; nothing where the line runs on its legs' grades.</summary>
    public FitPlan? Fit { get; init; }
}

/// <summary>The top line over measured ground.</summary>
/// <param name="Bindings">Where it lies against a limit.</param>
/// <param name="Sound">Whether it is proved to be the best within its tolerances.</param>
public sealed record FitPlan(FitMode Mode, Length LeastGap, Length MostGap, Length WantedGap, IReadOnlyList<BindingPlan> Bindings, bool Sound);

/// <summary>A limit that holds the top line at a station; of a bay that of its first post.</summary>
public sealed record BindingPlan(FitLimit Limit, Length Station);

/// <summary>A bay over measured ground. Heights over the job's datum.</summary>
/// <param name="Top">Of the fabric at the first post.</param>
/// <param name="TopTo">At the second.</param>
/// <param name="Plumb">How tall the fabric stands, measured plumb.</param>
/// <param name="LeastGap">Under the fabric, on the ground as it lies; below zero where the ground stands higher than the fabric's bottom.</param>
public sealed record BayPlan(Length From, Length To, Length Top, Length TopTo, Length Plumb, Length LeastGap, Length MostGap);

/// <summary>A stretch of ground that does not suit the fabric.</summary>
/// <param name="TooHigh">The ground is too high: cut, trim or bury; else too low: fill or close.</param>
/// <param name="Depth">At its deepest place.</param>
/// <param name="Area">Seen from the side.</param>
/// <param name="Volume">Over the width the rule set states.</param>
/// <param name="Remedy">The first that the job allows; none where it allows none that helps.</param>
public sealed record GradingPlan(Length From, Length To, bool TooHigh, Length Depth, Area Area, Volume Volume, Remedies Remedy);

/// <summary>Work along a line besides building it.</summary>
/// <param name="Along">Its length along the ground.</param>
/// <param name="Posts">Old posts that come out; 0 for other work.</param>
/// <param name="Pulled">True where they come out with their footings.</param>
/// <param name="Area">Ground cleared, or the opening that is closed.</param>
/// <param name="OldConcrete">What comes out with the old posts, as it lay.</param>
public sealed record WorkPlan(
    string Id, WorkKind Kind, Length From, Length To, Length Along, int Posts, bool Pulled, Area Area, Volume OldConcrete);

/// <summary>Panels on stands.</summary>
public sealed record TemporaryPlan(TemporaryId Id, string Name, Length Length, int Panels, int Stands, int Clamps, int Ballast);

/// <param name="Number">From 1 along the line.</param>
/// <param name="Station">Level distance from the start of the line.</param>
/// <param name="Grade">The steeper of the grades on its two sides, rise over run along the line.</param>
/// <param name="AboveGround">Top of the post over finished ground.</param>
/// <param name="HoleDepth">How deep it stands: in its hole or core, driven, or down a wall's face to the lowest bracket.</param>
/// <param name="Concrete">Hole minus post.</param>
/// <param name="Spoil">Ground out of the hole, as it lay.</param>
/// <param name="Bags">Whole bags for this hole.</param>
/// <param name="Ties">Ties that hold the fabric to a line post.</param>
public sealed record PostPlan(
    int Number, PostKind Kind, Length Station, Length East, Length North, SpecId Spec, string Section, Slope Grade, Length AboveGround,
    Length HoleDiameter, Length HoleDepth, Length CutLength, Length OrderLength, Volume Concrete, Volume Spoil, int Bags, Mass Mass, int Ties, Support Support)
{
    /// <summary>Of the ground over the job's datum, where it was measured.</summary>
    public Length? GroundHeight { get; init; }

    /// <summary>Of the top of the pipe over the job's datum, where the ground was measured.</summary>
    public Length? TopHeight { get; init; }

    /// <summary>Left of the order length; nothing where no lengths were chosen and each post takes its next step.</summary>
    public Length? CutOff { get; init; }

    /// <summary>That hold it to a wall's face; nothing for a post held otherwise.</summary>
    public int? Brackets { get; init; }

    /// <summary>Of all its brackets together.</summary>
    public int? Anchors { get; init; }
}

/// <summary>The fence between two terminals, hung in one pull.</summary>
/// <param name="FromPost">Index of the first post in the line's posts.</param>
/// <param name="ToPost">Index of the last; 0 where a closed line comes back to its start.</param>
/// <param name="Along">Centre to centre along the ground.</param>
/// <param name="Rail">Top rail between the terminals' faces; zero without one.</param>
/// <param name="Wire">Length of one tension wire with its wraps; zero without one. A run without a top rail has one at the top.</param>
/// <param name="Rings">On one tension wire.</param>
/// <param name="BayPieces">Pieces of one rail that is cut bay by bay; none where the spec has no such rail.</param>
/// <param name="Seam">Rings that lace one seam between two widths of fabric.</param>
/// <param name="Slats">Woven into the fabric.</param>
/// <param name="ScreenTies">Of the screen, on both of its edges.</param>
/// <param name="Strand">Barbed wire before its tails.</param>
/// <param name="Fabric">Between the two tension bars.</param>
/// <param name="RollTake">What the pull takes from a square-cut roll.</param>
public sealed record RunPlan(
    int Number, int FromPost, int ToPost, SpecId Spec, Length Level, Length Along, int Bays, Length LargestBay, Length Rail,
    int RailPieces, int Sleeves, Mass RailMass, Length Wire, Length Fabric, Length RollTake, int PicketsLow, int PicketsHigh, int RailTies,
    int Rings, IReadOnlyList<Length> BayPieces, Length Strand, int Seam, int Slats, int ScreenTies, int ConcertinaTies, EndPlan Start, EndPlan Finish)
{
    /// <summary>How its fabric is hung.</summary>
    public RunHang Hang { get; init; } = null!; // set by the stage that follows; 'required' would bring it into the JSON contract

    /// <summary>Centre to centre along the top line; along the ground where no ground was measured.</summary>
    public Length Top { get; init; }

    /// <summary>By how much top and bottom edge slide past each other from end to end.</summary>
    public Length Telescoping { get; init; }

    /// <summary>The bays over measured ground; none where the run follows its legs' grades.</summary>
    public IReadOnlyList<BayPlan> Fitted { get; init; } = [];

    [JsonIgnore]
    public IEnumerable<EndPlan> Ends => [Start, Finish];
}

/// <summary>One end of a pull on its terminal.</summary>
/// <param name="Rise">Grade seen walking towards the terminal.</param>
/// <param name="BraceRail">Between the faces of the terminal and the first line post; zero where the end is not braced.</param>
/// <param name="Mismatch">Of top and bottom along the rail.</param>
/// <param name="Columns">Picket columns of the bias at the middle of the advance's range.</param>
/// <param name="Crossings">Rows from the top at which the cut steps over.</param>
public sealed record EndPlan(
    Slope Rise, Length BraceRail, Length Bar, int Bands, FasteningSet BandsAt, Length Mismatch, int ColumnsLow, int Columns, int ColumnsHigh,
    IReadOnlyList<double> Crossings, LongEdge LongEdge);

/// <param name="NearFace">Level station of the face of the first post.</param>
/// <param name="Opening">Face to face as the posts stand.</param>
/// <param name="Track">In the ground, under opening and run-back of a rolling gate.</param>
/// <param name="LeafMass">As the job states it.</param>
public sealed record GatePlan(
    GateId Id, GateKind Kind, int FromPost, int ToPost, Length NearFace, Length Opening, Length Centres, int Leaves, Length Leaf,
    string Post, Length? Track, Mass? LeafMass)
{
    /// <summary>Index of the post that carries the first rollers of a cantilever gate; its second roller post is like it, off the line.</summary>
    public int? Roller { get; init; }

    /// <summary>Of a cantilever leaf, behind its first rollers.</summary>
    public Length? Tail { get; init; }

    /// <summary>Level station of the second roller post, along the line but not on it.</summary>
    public Length? SecondRoller { get; init; }
}
