using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>A point of a walk in local metres. It is never rounded: the difference of two neighbours is the leg, to the nanometre.</summary>
internal readonly record struct TapePoint(double East, double North)
{
    public TapePoint Step(Direction way, double metres) => new(East + way.East * metres, North + way.North * metres);

    public double To(TapePoint other)
    {
        var (east, north) = (other.East - East, other.North - North);
        return Math.Sqrt(east * east + north * north);
    }

    /// <summary>The way to another point; north where it is the same.</summary>
    public Direction WayTo(TapePoint other)
        => To(other) is > 0 and var metres ? new Direction((other.East - East) / metres, (other.North - North) / metres) : TapeWay.North;
}

/// <summary>A walked leg.</summary>
/// <param name="Along">True where its lengths were measured along the ground.</param>
/// <param name="Arc">The arc it runs on; null where it is straight.</param>
internal sealed record WalkedLeg(TapePoint From, TapePoint To, double Grade, Spec? Spec, bool Along, TapeArc? Arc)
{
    /// <summary>On an arc along the arc.</summary>
    public double LevelMetres => Arc is null ? From.To(To) : Arc.LevelMetres(From.To(To));

    /// <summary>The way it leaves its start.</summary>
    public Direction Way => Arc is null ? From.WayTo(To) : Arc.WayFrom(From, To).Facing;

    /// <summary>Whether a level distance is past the end of the leg by more than 1/1000 mm, the slack the plan allows as well.</summary>
    public bool Ends(Length level) => level.Metres > LevelMetres + 1e-6;

    /// <summary>A distance as it was measured on this leg, as a level one.</summary>
    public Length Level(Length measured) => Along ? measured / Math.Sqrt(1 + Grade * Grade) : measured;
}

/// <summary>
/// Which way the walk faces: a direction given as such, and all turns since then added up in degrees, so that four right
/// angles are exactly none and two hundred turns are one rounding.
/// </summary>
internal readonly record struct TapeWay(Direction Base, double TurnedDegrees)
{
    public static Direction North => new(0, 1);

    public Direction Facing => TurnedDegrees == 0 ? Base : Base.TurnRight(TurnedDegrees);

    public TapeWay Turn(double degrees) => this with { TurnedDegrees = (TurnedDegrees + degrees) % 360 };
}

/// <summary>A turn that waits for its leg.</summary>
internal sealed record TapeTurn(double Degrees, int Line, int Column);

/// <summary>A line while it is being walked.</summary>
internal sealed class TapeLine(LineId id, string name, int line, int column)
{
    private readonly Dictionary<string, int> counts = new(StringComparer.Ordinal);
    private TapeWay way = new(TapeWay.North, 0);

    public LineId Id => id;

    public string Name => name;

    /// <summary>Where the book begins the line.</summary>
    public (int Line, int Column) Place => (line, column);

    public TapePoint Start { get; set; }

    public List<WalkedLeg> Legs { get; } = [];

    /// <summary>Places of the ground, in the order they were taken.</summary>
    public List<GroundShot> Shots { get; } = [];

    public LineFit? Fit { get; set; }

    /// <summary>What holds from the next leg on; null until it is settled.</summary>
    public Spec? Spec { get; set; }

    /// <summary>Whether lengths are measured along the ground; null until the book says.</summary>
    public bool? Along { get; set; }

    public TapeTurn? Turn { get; set; }

    /// <summary>Line of the book that closes this line.</summary>
    public int? ClosedAt { get; set; }

    /// <summary>True once a leg could not be read: where the walk is, nobody knows, and nothing is measured against it.</summary>
    public bool Broken { get; private set; }

    /// <summary>True where a leg was walked, even one that could not be read.</summary>
    public bool Begun => Broken || Legs.Count > 0;

    public TapePoint End => Legs.Count > 0 ? Legs[^1].To : Start;

    public double WalkedMetres => Legs.Sum(l => l.LevelMetres);

    /// <summary>Which way the next leg goes, the waiting turn made.</summary>
    public Direction Facing => (Turn is null ? way : way.Turn(Turn.Degrees)).Facing;

    /// <summary>What stands where the line starts.</summary>
    public TieIn? TieStart { get; set; }

    /// <summary>What stands where it ends.</summary>
    public TieIn? TieFinish { get; set; }

    /// <summary>The hand the fabric hangs on.</summary>
    public string? FabricSide { get; set; }

    /// <summary>What a repair keeps.</summary>
    public IReadOnlyList<string> Keeps { get; set; } = [];

    /// <summary>Line of the book by what may be said once of a line.</summary>
    public Dictionary<string, int> Said { get; } = new(StringComparer.Ordinal);

    /// <summary>Numbers the marks of a line, each kind from 1.</summary>
    public int Next(string kind) => counts[kind] = counts.GetValueOrDefault(kind) + 1;

    public LegId LegId(int number) => new($"{id.Value}/leg{number}");

    public void Face(Direction direction) => way = new(direction, 0);

    /// <summary>Walks a length on the way faced, the waiting turn made first.</summary>
    public void Walk(double levelMetres, double grade, bool along)
    {
        if (Turn is not null) way = way.Turn(Turn.Degrees);
        Add(End.Step(way.Facing, levelMetres), grade, along, null);
    }

    /// <summary>Walks an arc whose tangent is the way faced, the waiting turn made first.</summary>
    public void WalkArc(TapeArc arc, double degrees, double grade, bool along)
    {
        if (Turn is not null) way = way.Turn(Turn.Degrees);
        (var to, way) = arc.Walk(End, way, degrees);
        Add(to, grade, along, arc);
    }

    /// <summary>Walks an arc to a point, which also says which way the walk then faces.</summary>
    public void WalkArcTo(TapeArc arc, TapePoint to, double grade, bool along)
    {
        way = arc.WayAt(End, to);
        Add(to, grade, along, arc);
    }

    /// <summary>Walks to a point, which also says which way the walk then faces.</summary>
    public void WalkTo(TapePoint to, double grade, bool along)
    {
        Face(End.WayTo(to));
        Add(to, grade, along, null);
    }

    /// <summary>Where the last leg ended before 'close' led it to the start; null where it did not.</summary>
    public TapePoint? WalkedTo { get; private set; }

    /// <summary>Line of the book that spreads the misclosure.</summary>
    public int? AdjustedAt { get; set; }

    /// <summary>Leads the last leg to the start of the line instead of to where it ended.</summary>
    public void LeadToStart()
    {
        WalkedTo = End;
        Legs[^1] = Legs[^1] with { To = Start };
    }

    /// <summary>Moves the corners of a closed line; its first stays.</summary>
    /// <param name="ends">Where the legs now end, the last one at the start.</param>
    public void Move(IReadOnlyList<TapePoint> ends)
    {
        for (var i = 0; i < Legs.Count; i++)
            Legs[i] = Legs[i] with { From = i == 0 ? Start : ends[i - 1], To = ends[i] };
    }

    public void Break()
    {
        Broken = true;
        Turn = null;
    }

    private void Add(TapePoint to, double grade, bool along, TapeArc? arc)
    {
        Legs.Add(new WalkedLeg(End, to, grade, Spec, along, arc));
        Turn = null;
    }
}
