using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk.Map;

/// <summary>What the hand holds over the drawing, and what it would set.</summary>
public sealed class MapTools(Session session)
{
    public static IReadOnlyList<string> All { get; } = ["select", "line", "gate", "obstacle", "work", "pin"];

    /// <summary>Kinds of gates that need no more than an opening; the others are entered in their table.</summary>
    public static IReadOnlyList<string> GateKinds { get; } = [Gate.Walk, Gate.Double, Gate.Cantilever];

    public static IReadOnlyList<string> ObstacleKinds { get; } =
        [Obstacle.NoDig, Obstacle.Slab, Obstacle.Rock, Obstacle.Wall, Obstacle.Tree, Obstacle.Wet, Obstacle.Swale, Obstacle.Culvert];

    public static IReadOnlyList<string> WorkKinds { get; } = [SiteWork.Removal, SiteWork.Clearing];

    public string Tool { get; set; } = "select";

    /// <summary>Another kind is as wide as is usual for it: a twelve-foot opening is meant for the gate it was typed for.</summary>
    public string GateKind
    {
        get;
        set
        {
            if (field != value) Opening = "";
            field = value;
        }
    } = Gate.Walk;

    /// <summary>As it was written; empty takes the usual one of its kind.</summary>
    public string Opening { get; set; } = "";

    public string ObstacleKind { get; set; } = Obstacle.NoDig;

    public string Clearance { get; set; } = "";

    public string Depth { get; set; } = "";

    public string WorkKind { get; set; } = SiteWork.Removal;

    public string Width { get; set; } = "";

    public bool Stands { get; set; }

    public bool NeedsDepth => ObstacleKind is Obstacle.Swale or Obstacle.Culvert;

    private bool Metric => session.Job.Units == UnitSystem.Metric;

    /// <summary>The opening that is usual for a kind: our own choice, to begin with.</summary>
    public string UsualOpening => session.Words.Long(Usual);

    private Length Usual => (GateKind, Metric) switch
    {
        (Gate.Double, true) => Length.FromMetres(4),
        (Gate.Double, _) => Length.FromFeet(16),
        (Gate.Cantilever, true) => Length.FromMetres(6),
        (Gate.Cantilever, _) => Length.FromFeet(20),
        (_, true) => Length.FromMetres(1.2),
        _ => Length.FromFeet(4),
    };

    /// <summary>The gate that would be set; its place is not in it.</summary>
    public Gate Like => new() { Id = new(""), Leg = new(""), Kind = GateKind, NearFace = Length.Zero, Opening = Read(Opening) ?? Usual };

    public Obstacle LikeObstacle => new()
    {
        Id = new(""),
        Leg = new(""),
        Kind = ObstacleKind,
        From = Length.Zero,
        To = Length.Zero,
        Clearance = Read(Clearance) ?? Length.Zero,
        Depth = NeedsDepth ? Read(Depth) : null,
    };

    public SiteWork LikeWork => new()
    {
        Id = new(""),
        Leg = new(""),
        Kind = WorkKind,
        From = Length.Zero,
        To = Length.Zero,
        Width = WorkKind == SiteWork.Clearing ? Read(Width) : null,
    };

    private Length? Read(string text) =>
        text.Trim().Length > 0 && LengthText.Parse(text, Metric ? LengthUnit.Metre : LengthUnit.Foot) is { Ok: true } read ? read.Value : null;
}
