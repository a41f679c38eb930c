using System.Text;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Editing;

/// <summary>What the tests of edits share. Points and lengths in feet.</summary>
internal static class Edits
{
    public static NewIds Ids => new("new");

    public static string Json(Job job) => Encoding.UTF8.GetString(JobFile.Write(job));

    public static SitePoint At(double east, double north) => new(Length.FromFeet(east), Length.FromFeet(north));

    public static Length Feet(double feet) => Length.FromFeet(feet);

    public static Job Done(EditOutcome outcome)
    {
        Assert.True(outcome.Done, string.Join('|', outcome.Problems.Select(p => ProblemText.Message(p, UnitSystem.UsCustomary))));
        return outcome.Job!;
    }

    public static ProblemCode Refused(EditOutcome outcome)
    {
        Assert.Null(outcome.Job);
        return outcome.Problems.First(p => p.Severity == Severity.Error).Code;
    }

    public static double[] LegFeet(Job job, string line = "main")
        => [.. LineShape.Of(job.Lines.First(l => l.Id.Value == line)).Legs.Select(l => Math.Round(Length.FromNanometres(l.LevelNm).Feet, 6))];

    /// <summary>Degrees the line turns at each vertex between two legs.</summary>
    public static double[] Turns(Job job, string line = "main")
    {
        var shape = LineShape.Of(job.Lines.First(l => l.Id.Value == line));
        return [.. Enumerable.Range(0, shape.Vertices.Count).Select(shape.TurnAt).OfType<double>().Select(t => Math.Round(t, 6))];
    }

    public static double Near(Job job, string gate = "gate") => Math.Round(job.Gates.First(g => g.Id.Value == gate).NearFace.Feet, 6);

    public static Obstacle Obstacle(string id, string leg, string kind, double from, double to) => new()
    {
        Id = new(id),
        Leg = new(leg),
        Kind = kind,
        From = Feet(from),
        To = Feet(to),
    };

    /// <summary>Two legs with a right turn: 100 ft north, 80 ft east.</summary>
    public static Job Ell() => Some.Job(Some.Line("main", false, [(0, 0), (0, 100), (80, 100)]));

    /// <summary>A closed yard of 60 by 90 ft: north, east, south, west.</summary>
    public static Job Yard() => Some.Job(Some.Line("main", true, [(0, 0), (0, 60), (90, 60), (90, 0)]));
}
