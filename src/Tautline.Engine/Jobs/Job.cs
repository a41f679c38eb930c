using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

/// <summary>
/// What people enter for one piece of work; a plain document. Lengths are metres, grades are rise over run. Fields and kinds
/// this version does not know are kept in <see cref="Extra"/> and written back with equal values; that property has a setter only
/// because the serializer fills it after the constructor.
/// </summary>
public sealed record Job
{
    public const string FormatName = "tautline-job";
    public const int CurrentVersion = 1;

    public string Format { get; init => field = value ?? FormatName; } = FormatName;

    public int Version { get; init; } = CurrentVersion;

    /// <summary>Parts that a program must understand before it may plan or write this job.</summary>
    public IReadOnlyList<string> MustUnderstand { get; init => field = value ?? []; } = [];

    public required JobId Id { get; init; }

    public string Name { get; init => field = value ?? ""; } = "";

    /// <summary>How lengths are shown to people; the document itself is metric.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>The named rule set the plan starts from.</summary>
    public string RuleSet { get; init => field = value ?? "base"; } = "base";

    /// <summary>Limits this job states for itself.</summary>
    public IReadOnlyList<RuleOverride> AsSpecified { get; init => field = value ?? []; } = [];

    public CoordinateFrame? Coordinates { get; init; }

    public IReadOnlyList<Spec> Specs { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Line> Lines { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Gate> Gates { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Obstacle> Obstacles { get; init => field = value ?? []; } = [];

    public IReadOnlyList<RollCalibration> Calibrations { get; init => field = value ?? []; } = [];

    /// <summary>Places where a person wants a line post, or where one stands already.</summary>
    public IReadOnlyList<Pin> Pins { get; init => field = value ?? []; } = [];

    /// <summary>What is done along the fence besides building it: old fence taken out, ground cleared.</summary>
    public IReadOnlyList<SiteWork> Works { get; init => field = value ?? []; } = [];

    /// <summary>Panels on stands that close the site while the fence is built.</summary>
    public IReadOnlyList<TemporaryFence> Temporary { get; init => field = value ?? []; } = [];

    /// <summary>Fabric at hand or on order.</summary>
    public IReadOnlyList<RollStock> Stock { get; init => field = value ?? []; } = [];

    /// <summary>What the crew saw of rolls: it settles which splices match.</summary>
    public IReadOnlyList<RollReport> Seen { get; init => field = value ?? []; } = [];

    /// <summary>How single runs are hung, where that is settled.</summary>
    public IReadOnlyList<HangNote> Hangs { get; init => field = value ?? []; } = [];

    /// <summary>'listed', run by run along the lines, or 'free': in whatever order leaves least over. Listed where left out.</summary>
    public string? HangOrder { get; init; }

    /// <summary>The ground along the lines as it was measured.</summary>
    public GroundSnapshot? Ground { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A limit 'as specified': the rule's key and its value in the rule's own SI unit, with where the job says so.</summary>
public sealed record RuleOverride
{
    public required string Rule { get; init; }

    public required double Value { get; init; }

    public string Source { get; init => field = value ?? ""; } = "";

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>How the job's local metres relate to a map: local = (projected - origin) * ground scale.</summary>
public sealed record CoordinateFrame
{
    public required string System { get; init; }

    public double OriginEast { get; init; }

    public double OriginNorth { get; init; }

    /// <summary>Ground length over grid length; 1 where the frame is local.</summary>
    public double GroundScale { get; init; } = 1;

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>What the fence is made of. A section or part left out is chosen by the rule set from the height.</summary>
public sealed record Spec
{
    public required SpecId Id { get; init; }

    public string Name { get; init => field = value ?? ""; } = "";

    /// <summary>Height of the fabric, square to the rail.</summary>
    public required Length Height { get; init; }

    /// <summary>Clear opening between parallel wires; 2 in where the job does not say.</summary>
    public Length? Mesh { get; init; }

    /// <summary>Wire gauge by its trade number, '9' where the job does not say.</summary>
    public string Gauge { get; init => field = value ?? "9"; } = "9";

    /// <summary>Upper and lower edge, 'KK', 'KT', 'TK' or 'TT'; left out, the usual one of the height and mesh.</summary>
    public string? Selvage { get; init; }

    /// <summary>'zinc', 'aluminum' or 'polymer'; zinc where left out, polymer where a colour is named.</summary>
    public string? Coating { get; init; }

    /// <summary>Colour of the polymer, carried by every part that shows: 'green', 'olive-green', 'brown' or 'black' (ASTM F934).</summary>
    public string? Colour { get; init; }

    /// <summary>Slats woven into the diamonds.</summary>
    public Slats? Slats { get; init; }

    /// <summary>Cloth laced to the fabric.</summary>
    public Screen? Screen { get; init; }

    /// <summary>Coils of concertina wire.</summary>
    public Concertina? Concertina { get; init; }

    /// <summary>Catalogue section of line posts.</summary>
    public string? LinePost { get; init; }

    /// <summary>Catalogue section of end, corner and pull posts.</summary>
    public string? TerminalPost { get; init; }

    /// <summary>Catalogue section of the top rail.</summary>
    public string? RailSection { get; init; }

    /// <summary>'rail' or 'wire'.</summary>
    public string Top { get; init => field = value ?? "rail"; } = "rail";

    /// <summary>'rail' or left out: a middle rail cut bay by bay.</summary>
    public string? Middle { get; init; }

    /// <summary>'wire', 'rail' or 'none'.</summary>
    public string Bottom { get; init => field = value ?? "wire"; } = "wire";

    /// <summary>'yes' or 'no'; left out, the rule set decides where it can.</summary>
    public string? Brace { get; init; }

    /// <summary>How many equal widths of fabric are laced one above the other to make the height; 1 where left out.</summary>
    public int? Laced { get; init; }

    /// <summary>Height of the fabric that is bought where it is trimmed to the fence's: whole diamonds come off its lower edge. None where left out.</summary>
    public Length? CutFrom { get; init; }

    /// <summary>Barbed wire over the fabric.</summary>
    public Barb? Barb { get; init; }

    /// <summary>How line posts are held: 'concrete', 'driven', 'cored' or 'plated'; concrete where left out.</summary>
    public string? LineSupport { get; init; }

    /// <summary>How terminals are held: 'concrete', 'cored' or 'plated'; concrete where left out.</summary>
    public string? TerminalSupport { get; init; }

    /// <summary>Length of the rolls the fabric comes in.</summary>
    public Length? Roll { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Barbed wire on arms.</summary>
public sealed record Barb
{
    /// <summary>3 on a single arm, 6 on a V.</summary>
    public required int Strands { get; init; }

    /// <summary>'left' or 'right' of the line walked forward, or 'both' for a V; 'up' for vertical arms.</summary>
    public required string Lean { get; init; }

    /// <summary>
    /// Whether the spec's height is the 'fabric' alone or the 'overall' height with one foot of barb; left out, the job must say.
    /// </summary>
    public string? HeightIs { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Slats: one in each column of diamonds, or as the maker counts them.</summary>
public sealed record Slats
{
    /// <summary>Slats in ten feet of fence, as the maker states them.</summary>
    public required double PerTenFeet { get; init; }

    /// <summary>Whether a strip locks them: 'top', 'bottom' or left out.</summary>
    public string? Lock { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Wind or privacy screen on the fabric. It multiplies the wind: posts and footings must be proved with it.</summary>
public sealed record Screen
{
    public required Length Height { get; init; }

    /// <summary>Length of the rolls it comes in; 50 ft where left out.</summary>
    public Length? Roll { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Concertina wire along the fence.</summary>
public sealed record Concertina
{
    /// <summary>Fence that one coil covers, stretched as the maker or the job says.</summary>
    public required Length Covers { get; init; }

    /// <summary>Space between the ties that hold it.</summary>
    public required Length TieSpacing { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>One continuous fence line: vertices in <see cref="Vertex.Order"/>, closed or open.</summary>
public sealed record Line
{
    public required LineId Id { get; init; }

    public OrderKey Order { get; init; }

    public string Name { get; init => field = value ?? ""; } = "";

    public bool Closed { get; init; }

    public required SpecId Spec { get; init; }

    /// <summary>What stands where an open line starts.</summary>
    public TieIn? Start { get; init; }

    /// <summary>What stands where an open line ends.</summary>
    public TieIn? Finish { get; init; }

    /// <summary>The hand the fabric hangs on, walking the line forward: 'left' or 'right'; left out, the outside of every curve.</summary>
    public string? FabricSide { get; init; }

    /// <summary>Repair of standing fence: what stays and is not bought, of 'line-posts', 'rail' and 'wire'.</summary>
    public IReadOnlyList<string> Keeps { get; init => field = value ?? []; } = [];

    /// <summary>Where the heights under the line come from; left out, the job's surface or the grades of the legs.</summary>
    public LineGround? Ground { get; init; }

    /// <summary>How the fence goes over the ground.</summary>
    public LineFit? Fit { get; init; }

    public IReadOnlyList<Vertex> Vertices { get; init => field = value ?? []; } = [];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Something that stands where a line ends.</summary>
public sealed record TieIn
{
    public const string Building = "building";
    public const string Wall = "wall";
    public const string Fence = "fence";

    /// <summary>'building' or 'wall': an end post of ours is set beside it. 'fence': the line ties to its standing post.</summary>
    public required string Kind { get; init; }

    /// <summary>Catalogue section of the standing post of a fence.</summary>
    public string? Section { get; init; }

    /// <summary>'bar' where the fabric ends on the post (also where left out), 'woven' where it is woven into fabric that stands.</summary>
    public string? Fabric { get; init; }

    /// <summary>Height of the top of the standing fabric over the job's datum: the new one meets it there.</summary>
    public Length? Top { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A point of a line, in local metres, and the leg that leaves it.</summary>
public sealed record Vertex
{
    public required VertexId Id { get; init; }

    public OrderKey Order { get; init; }

    public required Length East { get; init; }

    public required Length North { get; init; }

    public Leg? Leg { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

public sealed record Leg
{
    public required LegId Id { get; init; }

    /// <summary>Rise over run walking the line forward.</summary>
    public Slope Grade { get; init; }

    /// <summary>The arc this leg runs on; left out, it is straight.</summary>
    public LegCurve? Curve { get; init; }

    /// <summary>The spec from this leg on its own; left out, the line's.</summary>
    public SpecId? Spec { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>The shorter arc of a radius between the two ends of a leg.</summary>
public sealed record LegCurve
{
    public required Length Radius { get; init; }

    /// <summary>The hand it bends to, walking the line forward: 'left' or 'right'.</summary>
    public required string Bends { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>An opening in a leg, face to face of its posts, measured level.</summary>
public sealed record Gate
{
    public const string Walk = "walk";
    public const string Double = "double";
    public const string Cantilever = "cantilever";

    /// <summary>A leaf on wheels along a track in the ground.</summary>
    public const string Rolling = "rolling";

    /// <summary>A leaf hung from a beam over the opening.</summary>
    public const string Overhead = "overhead";

    public required GateId Id { get; init; }

    public required LegId Leg { get; init; }

    public required string Kind { get; init; }

    /// <summary>Level distance from the start of the leg to the near face of the opening.</summary>
    public required Length NearFace { get; init; }

    public required Length Opening { get; init; }

    /// <summary>For a gate that slides: towards the 'start' or the 'end' of the leg.</summary>
    public string? RunsBack { get; init; }

    /// <summary>Catalogue section of its posts; needed for rolling and overhead gates, for which no table is at hand.</summary>
    public string? Post { get; init; }

    /// <summary>Weight of the leaf as its maker states it, kilograms; for rolling and overhead gates.</summary>
    public double? LeafMass { get; init; }

    /// <summary>For an overhead gate: clear height under the beam.</summary>
    public Length? Clearance { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A stretch of a leg with its own rule for posts, measured level from the start of the leg.</summary>
public sealed record Obstacle
{
    /// <summary>No post may stand here.</summary>
    public const string NoDig = "no-dig";

    /// <summary>Posts are cored into a slab or set on plates.</summary>
    public const string Slab = "slab";

    /// <summary>Posts are cored into rock.</summary>
    public const string Rock = "rock";

    /// <summary>The fence stands on top of a wall or along the edge of a dock.</summary>
    public const string Wall = "wall";

    /// <summary>A trunk in or beside the line: no post in its root space.</summary>
    public const string Tree = "tree";

    /// <summary>Holes stand in water or caving ground.</summary>
    public const string Wet = "wet";

    /// <summary>A dip that the fabric spans: no post in it, and its opening is closed.</summary>
    public const string Swale = "swale";

    /// <summary>A channel or pipe end that the fabric spans: no post in it, and its opening is closed.</summary>
    public const string Culvert = "culvert";

    public required ObstacleId Id { get; init; }

    public required LegId Leg { get; init; }

    public required string Kind { get; init; }

    public required Length From { get; init; }

    public required Length To { get; init; }

    /// <summary>
    /// How posts are held on a slab, a wall or in rock: 'cored' or 'plated', on a wall also 'bracketed', by brackets on its face. Left out,
    /// plated on a wall, else cored.
    /// </summary>
    public string? Support { get; init; }

    /// <summary>Thickness of a wall's top, or from a dock's edge to the first thing behind it.</summary>
    public Length? Width { get; init; }

    /// <summary>
    /// Of a swale or culvert, from the bottom of the fabric down to its deepest point. Of a wall with brackets, from its top down its
    /// face to the lowest one; the rule set's where left out.
    /// </summary>
    public Length? Depth { get; init; }

    /// <summary>Free ground wanted between the stretch and the edge of a hole.</summary>
    public Length Clearance { get; init; }

    public string Note { get; init => field = value ?? ""; } = "";

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Ten pickets measured along the fabric of a delivered roll.</summary>
public sealed record RollCalibration
{
    public required SpecId Spec { get; init; }

    public required Length TenPickets { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A line post at a level distance from the start of a leg.</summary>
public sealed record Pin
{
    public required PinId Id { get; init; }

    public required LegId Leg { get; init; }

    public required Length At { get; init; }

    /// <summary>True where the post stands already: nothing of it is bought or dug.</summary>
    public bool Stands { get; init; }

    /// <summary>Height of the top of the fabric here over the job's datum, where it is settled.</summary>
    public Length? Top { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Work along a stretch of a leg, measured level from the start of the leg.</summary>
public sealed record SiteWork
{
    /// <summary>Old fence is taken out.</summary>
    public const string Removal = "removal";

    /// <summary>Brush and small growth are cleared.</summary>
    public const string Clearing = "clearing";

    public required WorkId Id { get; init; }

    public required LegId Leg { get; init; }

    /// <summary>'removal' or 'clearing'.</summary>
    public required string Kind { get; init; }

    public required Length From { get; init; }

    public required Length To { get; init; }

    /// <summary>Old posts as counted; left out, by the rule set's usual spacing.</summary>
    public int? Posts { get; init; }

    /// <summary>How old posts go: 'pulled' with their footings (also where left out) or 'cut' at the ground.</summary>
    public string? PostsOut { get; init; }

    /// <summary>Width cleared.</summary>
    public Length? Width { get; init; }

    public string Note { get; init => field = value ?? ""; } = "";

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Panels on stands, by their length alone.</summary>
public sealed record TemporaryFence
{
    public required TemporaryId Id { get; init; }

    public string Name { get; init => field = value ?? ""; } = "";

    public required Length Length { get; init; }

    /// <summary>Length of one panel; the rule set's where left out.</summary>
    public Length? Panel { get; init; }

    /// <summary>True where it comes back to its start.</summary>
    public bool Closed { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}
