using System.Diagnostics;
using System.Globalization;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Office;

namespace Tautline.Bench;

/// <summary>Every paper of the invented line, from the plan to the bytes of the file.</summary>
internal static class PaperRun
{
    public static void Print(double[] sizes, int runs)
    {
        foreach (var miles in sizes)
        {
            var job = LongJobs.Line(miles);
            var plan = JobPlanner.Plan(job, FenceCatalog.BuiltIn(), Rules.BuiltIn(), BuiltFacts.None);
            var choice = new PaperChoice(job.Units, Phrases.Of("en"), new(PaperSize.Letter));
            foreach (var kind in Enum.GetValues<PaperKind>())
                Measure($"{miles} mi, {plan.Lines[0].Posts.Count} posts, {kind}", runs, () =>
                {
                    var printed = PdfWriter.Write(PaperMaker.Of(kind, plan, choice));
                    return (printed.Pages, printed.Pdf.Length);
                });
            Measure($"{miles} mi, {plan.Lines[0].Posts.Count} posts, tables", runs, () => (1, XlsxWriter.WriteAsync(PlanBook.Of(plan, choice)).GetAwaiter().GetResult().Length));
        }
    }

    private static void Measure(string what, int runs, Func<(int Pages, int Bytes)> make)
    {
        var first = Stopwatch.GetTimestamp();
        var made = make();
        var cold = Stopwatch.GetElapsedTime(first).TotalMilliseconds;
        List<double> times = [];
        long allocated = 0;
        for (var i = 0; i < runs; i++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var start = Stopwatch.GetTimestamp();
            make();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: {made.Pages} pages, {made.Bytes / 1e6:0.00} MB, first {cold:0} ms, median {times[runs / 2]:0} ms, least {times[0]:0} ms, {allocated / 1048576.0:0} MB allocated"));
    }
}
