using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.Tests;

/// <summary>A hundred feet of fence running north, eleven posts at ten feet, and what a crew writes about it.</summary>
internal static class Yard
{
    private static readonly FenceCatalog catalog = FenceCatalog.BuiltIn();

    public static Job Job { get; } = new()
    {
        Id = new("yard"),
        Specs = [new() { Id = new("fence"), Height = Length.FromFeet(6), Brace = "no" }],
        Lines = [new() { Id = new("main"), Name = "main", Spec = new("fence"), Vertices = [Vertex("a", 0, "leg"), Vertex("b", 100, null)] }],
    };

    public static FieldPlan Plan(params LogEntry[] entries) => Plan(Job, entries);

    public static FieldPlan Plan(Job job, params LogEntry[] entries) => FieldPlan.Of(job, catalog, RuleSets.For(job), LogState.Of(entries));

    public static LogEntry Entry(string device, long sequence, long tick, string kind = LogEntry.Note)
        => new() { Device = device, Sequence = sequence, Tick = tick, At = tick, Kind = kind };

    public static LogEntry Work(long sequence, WorkDone done, LogPlace? place = null)
        => Entry("a", sequence, sequence, LogEntry.Work) with { Done = done, Place = place };

    public static double[] Feet(Engine.Plans.Plan plan) => [.. plan.Lines[0].Posts.Select(p => Math.Round(p.Station.Feet, 4))];

    public static Job Shifted(double feet) => Job with
    {
        Lines = [Job.Lines[0] with { Vertices = [.. Job.Lines[0].Vertices.Select(v => v with { East = Length.FromFeet(feet) })] }],
    };

    private static Vertex Vertex(string id, double north, string? leg) => new()
    {
        Id = new(id),
        Order = new(id == "a" ? "1" : "2"),
        East = Length.Zero,
        North = Length.FromFeet(north),
        Leg = leg is null ? null : new() { Id = new(leg) },
    };

    /// <summary>The same fence so many feet long on one grade.</summary>
    public static Job Sloped(double feet, double grade) => Job with
    {
        Lines = [Job.Lines[0] with { Vertices = [Vertex("a", 0, "leg") with { Leg = new() { Id = new("leg"), Grade = new(grade) } }, Vertex("b", feet, null)] }],
    };

    /// <summary>The same hundred feet with the ground shot at both ends, in feet over the datum.</summary>
    public static Job Shot(double start, double end) => Job with
    {
        Lines =
        [
            Job.Lines[0] with
            {
                Ground = new()
                {
                    Shots =
                    [
                        new() { Leg = new("leg"), At = Length.Zero, Height = Length.FromFeet(start) },
                        new() { Leg = new("leg"), At = Length.FromFeet(100), Height = Length.FromFeet(end) },
                    ],
                },
            },
        ],
    };

    /// <summary>A square, walked with the sun.</summary>
    public static Job Closed(double side) => Job with
    {
        Lines =
        [
            Job.Lines[0] with
            {
                Closed = true,
                Vertices =
                [
                    Vertex("a", 0, "one"), Vertex("b", side, "two") with { Order = new("2") }, Vertex("c", side, "three") with { Order = new("3"), East = Length.FromFeet(side) },
                    Vertex("d", 0, "four") with { Order = new("4"), East = Length.FromFeet(side) },
                ],
            },
        ],
    };

    /// <summary>The same fence with no posts wanted on a stretch, in feet from its start.</summary>
    public static Job NoDig(double from, double to, double clearance) => Job with
    {
        Obstacles =
        [
            new() { Id = new("water"), Leg = new("leg"), Kind = Obstacle.NoDig, From = Length.FromFeet(from), To = Length.FromFeet(to), Clearance = Length.FromFeet(clearance) },
        ],
    };

    /// <summary>The hundred feet with the posts of check job 1.</summary>
    public static Job Counted => Job with { Specs = [Job.Specs[0] with { LinePost = "2.375-sch40", TerminalPost = "2.875-sch40", RailSection = "1.660-sch40" }] };

    /// <summary>A walk gate right at the start: its first post stands in no run.</summary>
    public static Job GateFirst => Counted with
    {
        Gates = [new() { Id = new("gate"), Leg = new("leg"), Kind = Gate.Walk, NearFace = Length.FromInches(1.4375), Opening = Length.FromFeet(4) }],
    };

    /// <summary>The same hundred feet over a plane that is level along the line and rises to its right.</summary>
    public static Job Tilted(double grade) => Job with
    {
        Ground = new()
        {
            Source = new() { File = "made up", Sha256 = new string('0', 64) },
            Width = new(10),
            Points = [-10, -5, 30 - 10 * grade, 10, -5, 30 + 10 * grade, 10, 40, 30 + 10 * grade, -10, 40, 30 - 10 * grade],
            Faces = [0, 1, 2, 0, 2, 3],
        },
    };

    /// <summary>A quarter circle of 100 ft from (0, 0) northwards, bending right about (100, 0), to (100, 100).</summary>
    public static Job Quarter => Job with
    {
        Lines =
        [
            Job.Lines[0] with
            {
                Vertices =
                [
                    Vertex("a", 0, "leg") with { Leg = new() { Id = new("leg"), Curve = new() { Radius = Length.FromFeet(100), Bends = "right" } } },
                    Vertex("b", 100, null) with { East = Length.FromFeet(100) },
                ],
            },
        ],
    };
}
