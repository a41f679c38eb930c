using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

/// <summary>Reads books for tests, and measures the jobs read as the plan does.</summary>
internal static class Books
{
    public const string Spec = "spec fence height 6' brace no\n";

    public static Job Job(string book)
    {
        var reading = TapeBookReader.Read(book);
        Assert.True(reading.Job is not null, string.Join('\n', reading.Problems));
        return reading.Job!;
    }

    /// <summary>The job of a book that gives rise to no remark at all.</summary>
    public static Job Clean(string book)
    {
        Assert.Empty(TapeBookReader.Read(book).Problems);
        return Job(book);
    }

    /// <summary>The legs of the job's lines as the site stage measures them, whole nanometres.</summary>
    public static IReadOnlyList<SiteLeg> Legs(Job job)
    {
        var problems = new ProblemList();
        var specs = SpecStage.Resolve(job, Some.Catalog, Some.Rules, problems);
        var lines = SiteStage.Measure(job, specs, Some.Catalog, BuiltFacts.None, problems);
        Assert.Empty(problems.Found.Where(p => p.Severity == Severity.Error).Select(p => ProblemText.Message(p, UnitSystem.UsCustomary)));
        return [.. lines.SelectMany(l => l.Chain.Legs)];
    }

    public static (double East, double North)[] Points(Job job)
        => [.. job.Lines[0].Vertices.Select(v => (Math.Round(v.East.Feet, 6) + 0.0, Math.Round(v.North.Feet, 6) + 0.0))];

    public static string[] Codes(string book) => [.. TapeBookReader.Read(book).Problems.Select(p => p.Code)];

    public static Plan Plan(string book) => Plan(Job(book));

    /// <summary>By the rule set the job names.</summary>
    public static Plan Plan(Job job) => JobPlanner.Plan(job, Some.Catalog, RuleSets.For(job), BuiltFacts.None);
}
