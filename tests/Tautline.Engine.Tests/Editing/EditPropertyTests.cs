using CsCheck;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Tests.Symmetry;
using static Tautline.Engine.Tests.Editing.Edits;

namespace Tautline.Engine.Tests.Editing;

/// <summary>What holds for every edit of every job.</summary>
public sealed class EditPropertyTests
{
    private static readonly Gen<(Job Job, int Vertex, double East, double North)> genMove
        = Gen.Select(GenFence.Any, Gen.Int[0, 7], Gen.Double[-30, 30], Gen.Double[-30, 30]);

    private static VertexId Vertex(Job job, int at) => job.Lines[0].Vertices[at % job.Lines[0].Vertices.Count].Id;

    private static SitePoint Beside(Job job, VertexId id, double east, double north)
    {
        var vertex = job.Lines[0].Vertices.First(v => v.Id == id);
        return new(vertex.East + Feet(east), vertex.North + Feet(north));
    }

    private static long[] LegsNm(Job job) => [.. LineShape.Of(job.Lines[0]).Legs.Select(l => l.LevelNm)];

    /// <summary>A job that plans goes on planning, or the edit says why not. Some hundred edits of each kind.</summary>
    [Fact]
    public void AnEditedJobPlansOrTheEditSaysWhy()
    {
        var (done, refused) = (0, 0);
        Gen.Select(genMove, Gen.Int[0, 9], Gen.Double[0, 1]).Always((move, kind, part) =>
        {
            if (Some.Plan(move.Job).HasErrors) return;
            var outcome = Edit(move.Job, kind, move.Vertex, part, move.East, move.North);
            if (!outcome.Done)
            {
                Assert.Contains(outcome.Problems, p => p.Severity == Severity.Error);
                Interlocked.Increment(ref refused);
                return;
            }
            Interlocked.Increment(ref done);
            var errors = Some.Plan(outcome.Job!).Problems.Where(p => p.Severity == Severity.Error).Select(p => $"{p.Code} {p.Place}").ToList();
            Assert.True(errors.Count == 0, $"{outcome.Label}: {string.Join('|', errors)}");
        }, iter: 600, print: t => $"{t.Item2} {t.Item3} {t.Item1.Vertex} {t.Item1.East} {t.Item1.North} {Json(t.Item1.Job)}");
        Assert.True(done > 150, $"{done} done, {refused} refused");
    }

    private static EditOutcome Edit(Job job, int kind, int vertex, double part, double east, double north)
    {
        var id = Vertex(job, vertex);
        var shape = LineShape.Of(job.Lines[0]);
        var index = vertex % shape.Legs.Count;
        var (leg, level) = (shape.Vertices[index].Leg!.Id, Length.FromNanometres(shape.Legs[index].LevelNm));
        return kind switch
        {
            0 => VertexEdits.Move(job, id, Beside(job, id, east, north)),
            1 => VertexEdits.Insert(job, leg, level * part, Ids),
            2 => VertexEdits.Delete(job, id),
            3 => LegEdits.SetLength(job, leg, level * (0.5 + part)),
            4 => LegEdits.SetTurn(job, id, part * 200 - 100),
            5 => job.Lines[0].Closed ? LineEdits.Open(job, leg) : LineEdits.Close(job, job.Lines[0].Id, Ids),
            6 => LineTurns.Reverse(job, job.Lines[0].Id),
            7 => LineTurns.Split(job, id, Ids),
            8 => GateEdits.Place(job, leg, level * part, Some.Gate("", "", "walk", 0, 4), Ids),
            _ => VertexEdits.InsertAt(job, leg, level * part, Beside(job, id, east, north), Ids),
        };
    }

    [Fact]
    public void UndoingAnEditGivesTheSameJob()
        => genMove.Always(move =>
        {
            var before = Json(move.Job);
            var outcome = Edit(move.Job, move.Vertex, move.Vertex, 0.4, move.East, move.North);
            Assert.Equal(before, Json(move.Job));
            if (outcome.Job is { } after) Assert.Equal(before, Json(JobHistory.Of(move.Job).Push(outcome.Label, after).Undo().Job));
        }, iter: 200);

    [Fact]
    public void AVertexThereAndBackGivesTheSameLengths()
        => genMove.Always(move =>
        {
            var id = Vertex(move.Job, move.Vertex);
            var there = VertexEdits.Move(move.Job, id, Beside(move.Job, id, move.East, move.North));
            if (there.Job is null || VertexEdits.Move(there.Job, id, Beside(move.Job, id, 0, 0)).Job is not { } back) return;
            Assert.Equal(LegsNm(move.Job), LegsNm(back));
            if (there.Problems.Any(p => p.Code is ProblemCode.EditGateSlid or ProblemCode.EditMarkCut or ProblemCode.EditMarkOff)) return;
            // A stretch keeps its part of the leg: a leg pulled short and long again makes more of the nanometre it was rounded to.
            foreach (var (was, now) in move.Job.Obstacles.Zip(back.Obstacles)) Assert.InRange((was.From - now.From).Nanometres, -1000, 1000);
        }, iter: 300);

    /// <summary>Everything but numbers in their last nanometre is as it was.</summary>
    [Fact]
    public void InsertingThenDeletingGivesTheOldLine()
        => Gen.Select(GenFence.Any, Gen.Int[0, 7], Gen.Double[0.05, 0.95]).Always((job, at, part) =>
        {
            var shape = LineShape.Of(job.Lines[0]);
            var index = at % shape.Legs.Count;
            var inserted = VertexEdits.Insert(job, shape.Vertices[index].Leg!.Id, Length.FromNanometres(shape.Legs[index].LevelNm) * part, Ids);
            if (inserted.Job is not { } between) return;
            var added = between.Lines[0].Vertices.Select(v => v.Id).Except(job.Lines[0].Vertices.Select(v => v.Id)).Single();
            var back = Done(VertexEdits.Delete(between, added));
            Assert.Equal(Json(job with { Gates = [], Obstacles = [] }), Json(back with { Gates = [], Obstacles = [] }));
            Assert.Equal(job.Gates.Select(g => (g.Id, g.Leg)), back.Gates.Select(g => (g.Id, g.Leg)));
            Assert.All(job.Gates.Zip(back.Gates), p => Assert.InRange((p.First.NearFace - p.Second.NearFace).Nanometres, -2, 2));
            Assert.Equal(job.Obstacles.Select(o => (o.Id, o.Leg)), back.Obstacles.Select(o => (o.Id, o.Leg)));
            Assert.All(job.Obstacles.Zip(back.Obstacles), p => Assert.InRange((p.First.To - p.Second.To).Nanometres, -2, 2));
        }, iter: 300);

    /// <summary>A reversed line needs the same and tells the same; twice reversed it is the old one.</summary>
    [Fact]
    public void AReversedLineIsTheSameFence()
        => GenFence.Any.Where(j => j.Specs.All(s => s.Barb is null)).Always(job =>
        {
            var plan = Some.Plan(job);
            if (plan.HasErrors) return;
            var back = Done(LineTurns.Reverse(job, job.Lines[0].Id));
            Needs.AssertSameNet(plan, Some.Plan(back));
            Needs.AssertSameLayout(plan, Some.Plan(back));
            Assert.Equal(LegsNm(job), LegsNm(Done(LineTurns.Reverse(back, job.Lines[0].Id))));
        }, iter: 150, print: Json);

    /// <summary>The foot of a point of the line is that point, on arcs too.</summary>
    [Fact]
    public void APointOfTheLineIsItsOwnFoot()
        => Gen.Select(GenFence.Any, Gen.Int[0, 7], Gen.Double[0.01, 0.99]).Always((job, at, part) =>
        {
            var path = LineShape.Of(job.Lines[0]).Legs[at % LineShape.Of(job.Lines[0]).Legs.Count];
            var nm = new Length(path.LevelNm * part * 1e-9).Nanometres;
            var foot = path.Nearest(path.At(nm));
            Assert.InRange(foot.AtNm - nm, -200, 200);
            Assert.InRange(foot.Right.Metres, -1e-6, 1e-6);
        }, iter: 300);
}
