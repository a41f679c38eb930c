using System.Diagnostics;
using Tautline.Documents.Paper;
using Tautline.Documents.Plans;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

namespace Tautline.Web.Desk;

/// <summary>
/// What lies on the desk: the job that was opened, its plan, the paper made of it. A file that cannot be opened leaves all of it
/// where it was.
/// </summary>
public sealed class JobDesk
{
    private readonly Lazy<FenceCatalog> catalog = new(FenceCatalog.BuiltIn);

    /// <summary>The job that can be planned; nothing at first.</summary>
    public OpenedJob? Job { get; private set; }

    public PlannedJob? Planned { get; private set; }

    public PdfPaper? Paper { get; private set; }

    /// <summary>The file that could not be opened last, with the reasons; nothing after one that could.</summary>
    public OpenedJob? Refused { get; private set; }

    public void Open(OpenedJob file)
    {
        if (file.Job is null)
        {
            Refused = file;
            return;
        }

        (Job, Refused, Planned, Paper) = (file, null, null, null);
    }

    /// <exception cref="InvalidOperationException">No job is open.</exception>
    public void Plan()
    {
        OpenedJob file = Job ?? throw new InvalidOperationException("No job is open.");
        (Plan plan, double took) = Timed(file);
        var findings = file.Findings.Concat(plan.Problems.Select(file.Describe)).OrderByDescending(f => f.Severity).ToList();
        Planned = new PlannedJob(file, plan, PlanFile.Hash(plan), findings, new PlanTimes(took, []));
        Paper = null;
    }

    /// <summary>Plans the same job once more and adds its time to those of the plan.</summary>
    public void PlanAgain()
    {
        if (Planned is not { } planned) return;
        double took = Timed(planned.Source).Milliseconds;
        Planned = planned with { Times = planned.Times with { Again = [.. planned.Times.Again, took] } };
    }

    /// <summary>Puts the take-off on paper.</summary>
    /// <exception cref="InvalidOperationException">There is no plan, or one with errors.</exception>
    public PdfPaper Print(PaperSize size)
    {
        PlannedJob planned = Planned is { Plan.HasErrors: false } fit ? fit : throw new InvalidOperationException("There is no plan to print.");
        long start = Stopwatch.GetTimestamp();
        PrintedPage page = OnePagePdf.Write(TakeoffSheet.Of(planned.Plan, planned.Source.Units, size));
        double took = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        Paper = new PdfPaper(Path.GetFileNameWithoutExtension(planned.Source.FileName) + "-takeoff.pdf", page, took);
        return Paper;
    }

    private (Plan Plan, double Milliseconds) Timed(OpenedJob file)
    {
        (Job job, FenceCatalog parts, Rules limits) = (file.Job!, catalog.Value, RuleSets.For(file.Job!));
        long start = Stopwatch.GetTimestamp();
        Plan plan = JobPlanner.Plan(job, parts, limits, BuiltFacts.None);
        return (plan, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
    }
}
