using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;

namespace Tautline.Server.Jobs;

/// <summary>Prints one paper of a job.</summary>
internal static class SharedPaper
{
    /// <returns>PDF; nothing where the job has a mistake that keeps it from being planned.</returns>
    public static async Task<byte[]?> PrintAsync(byte[] head, PaperKind kind, string language)
    {
        if (JobFile.Read(head) is not { Job: { } job, HasErrors: false, ReadOnly: false }) return null;
        var plan = JobPlanner.Plan(job, FenceCatalog.BuiltIn(), RuleSets.For(job), BuiltFacts.None);
        if (plan.HasErrors) return null;
        var stakes = StakeLister.Of(plan, job.Units);
        PaperChoice choice = new(job.Units, Phrases.Of(language), new(job.Units == UnitSystem.Metric ? PaperSize.A4 : PaperSize.Letter))
        {
            Stakes = new(stakes.Unit.Name(), stakes.System ?? "", [.. stakes.Stakes.Select(s => new StakeRow(s.Point, s.Northing, s.Easting, s.Elevation))]),
        };
        return PdfWriter.Write(await PaperMaker.OfAsync(kind, plan, choice, (_, _) => Task.CompletedTask)).Pdf;
    }
}
