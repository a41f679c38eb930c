using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>What a book has said so far, and the job made of it at its end.</summary>
internal sealed class TapeBookState(TapeProblems problems)
{
    private readonly TapeIds lineIds = new("spec", "job", "temporary");
    private readonly TapeIds temporaryIds = new();

    public TapeProblems Problems => problems;

    public TapeSpecs Specs { get; } = new();

    public string Name { get; set; } = "";

    public UnitSystem Units { get; set; } = UnitSystem.UsCustomary;

    public string RuleSet { get; set; } = RuleSets.BaseName;

    public List<RuleOverride> AsSpecified { get; } = [];

    public List<RollCalibration> Calibrations { get; } = [];

    public List<TapeLine> Lines { get; } = [];

    public List<Gate> Gates { get; } = [];

    public List<Obstacle> Obstacles { get; } = [];

    public List<Pin> Pins { get; } = [];

    public List<SiteWork> Works { get; } = [];

    public List<TemporaryFence> Temporary { get; } = [];

    /// <summary>Whether lines measure along the ground unless they say otherwise.</summary>
    public bool? Along { get; set; }

    /// <summary>Line of the book by statement that may stand once.</summary>
    public Dictionary<string, int> Said { get; } = new(StringComparer.Ordinal);

    /// <summary>The line being walked, or null before the first.</summary>
    public TapeLine? Open => Lines.Count > 0 ? Lines[^1] : null;

    /// <summary>A length for people: to 1/16 in or to the millimetre.</summary>
    public string Show(double metres) => LengthText.Show(new Length(metres), Units);

    /// <summary>Begins a line; one without a name is named by its number.</summary>
    public TapeLine Begin(string? name, int line, int column)
    {
        EndLine();
        name ??= $"line {Lines.Count + 1}";
        if (Lines.Find(l => string.Equals(l.Name, name, StringComparison.OrdinalIgnoreCase)) is { } twin)
            problems.Add(TapeTexts.LineTwice, line, column, name, twin.Place.Line);
        var begun = new TapeLine(new LineId(lineIds.Make(name, "line")), name, line, column) { Along = Along };
        Lines.Add(begun);
        return begun;
    }

    /// <summary>The line whose last leg a mark stands on; null, and told, where no leg stands above it.</summary>
    public TapeLine? Begun(TapeText slip, TapeCursor statement, params object[] figures)
    {
        if (Open is { Begun: true } line) return line;
        statement.Problem(slip, 1, figures);
        return null;
    }

    /// <summary>Keeps a temporary fence under an id of its name.</summary>
    public void AddTemporary(TemporaryFence fence)
        => Temporary.Add(fence with { Id = new TemporaryId($"temporary/{temporaryIds.Make(fence.Name, "fence")}") });

    /// <summary>The job, or null where the book gives none; whether errors stand is for the reader to ask.</summary>
    public Job? Finish()
    {
        EndLine();
        if (!problems.HasErrors && Lines.Count == 0)
            problems.Add(Said.Count == 0 && Specs.All.Count == 0 ? TapeTexts.BookEmpty : TapeTexts.BookNoLeg, 1, 1);
        return problems.HasErrors ? null : Build();
    }

    private void EndLine()
    {
        if (Open is not { } open) return;
        if (!open.Begun) problems.Add(TapeTexts.LineEmpty, open.Place.Line, open.Place.Column, open.Name);
        if (open.Turn is { } turn) problems.Add(TapeTexts.TurnUnused, turn.Line, turn.Column);
        open.Turn = null;
        foreach (var (what, line) in open.Said.Where(s => open.ClosedAt is not null && s.Key.StartsWith("tie ", StringComparison.Ordinal)))
            problems.Add(TapeTexts.TieClosed, line, 1, open.Name, what);
    }

    private Job Build()
    {
        var keys = OrderKey.Spread(Lines.Count);
        return new Job
        {
            Id = new JobId($"job/{(TapeIds.Slug(Name) is { Length: > 0 } slug ? slug : "tape-book")}"),
            Name = Name,
            Units = Units,
            RuleSet = RuleSet,
            AsSpecified = AsSpecified,
            Specs = Specs.All,
            Lines = [.. Lines.Select((l, i) => Build(l, keys[i]))],
            Gates = Gates,
            Obstacles = Obstacles,
            Pins = Pins,
            Works = Works,
            Temporary = Temporary,
            Calibrations = Calibrations,
        };
    }

    private static Line Build(TapeLine line, OrderKey order)
    {
        var closed = line.ClosedAt is not null;
        var spec = line.Legs[0].Spec!.Id;
        var keys = OrderKey.Spread(line.Legs.Count + 1);
        var vertices = line.Legs.Select((l, i) => VertexOf(line, i, keys[i], l.From, LegOf(line, i, spec))).ToList();
        if (!closed) vertices.Add(VertexOf(line, line.Legs.Count, keys[^1], line.End, null));
        return new Line
        {
            Id = line.Id,
            Order = order,
            Name = line.Name,
            Closed = closed,
            Spec = spec,
            Start = line.TieStart,
            Finish = line.TieFinish,
            FabricSide = line.FabricSide,
            Keeps = line.Keeps,
            Ground = line.Shots.Count > 0 ? new LineGround { Shots = line.Shots } : null,
            Fit = line.Fit,
            Vertices = vertices,
        };
    }

    private static Vertex VertexOf(TapeLine line, int index, OrderKey order, TapePoint at, Leg? leg) => new()
    {
        Id = new VertexId($"{line.Id.Value}/v{index + 1}"),
        Order = order,
        East = new Length(at.East),
        North = new Length(at.North),
        Leg = leg,
    };

    private static Leg LegOf(TapeLine line, int index, SpecId spec)
    {
        var walked = line.Legs[index];
        return new Leg
        {
            Id = line.LegId(index + 1),
            Grade = new Slope(walked.Grade),
            Curve = walked.Arc?.Curve,
            Spec = walked.Spec!.Id == spec ? null : walked.Spec.Id,
        };
    }
}
