using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;

namespace Tautline.Server.Jobs;

/// <summary>Prints one paper of a job.</summary>
internal static class SharedPaper
{
    /// <returns>PDF, or the mistake that keeps the job from being planned.</returns>
    public static async Task<(byte[]? Pdf, string Fault)> PrintAsync(byte[] head, PaperKind kind, string language)
    {
        if (JobFile.Read(head) is not { Job: { } job, HasErrors: false, ReadOnly: false }) return (null, "a later program wrote it");
        var plan = JobPlanner.Plan(job, FenceCatalog.BuiltIn(), RuleSets.For(job), BuiltFacts.None);
        if (plan.Problems.FirstOrDefault(p => p.Severity == Severity.Error) is { } mistake) return (null, ProblemText.Message(mistake, job.Units));
        var stakes = StakeLister.Of(plan, job.Units);
        PaperChoice choice = new(job.Units, Phrases.Of(language), new(job.Units == UnitSystem.Metric ? PaperSize.A4 : PaperSize.Letter))
        {
            Stakes = new(stakes.Unit.Name(), stakes.System ?? "", [.. stakes.Stakes.Select(s => new StakeRow(s.Point, s.Northing, s.Easting, s.Elevation))]),
        };
        return (PdfWriter.Write(await PaperMaker.OfAsync(kind, plan, choice, (_, _) => Task.CompletedTask)).Pdf, "");
    }
}
