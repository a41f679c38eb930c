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
}
