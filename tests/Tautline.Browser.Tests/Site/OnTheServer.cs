using Tautline.Documents.Paper;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Site.TapeBook;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;

namespace Tautline.Browser.Tests.Site;

/// <summary>The same job worked out by the same Engine on the server's runtime.</summary>
internal static class OnTheServer
{
    public static Plan Plan(string sampleFile) => Plan(JobFile.Read(File.ReadAllBytes(Checkout.PathOf("samples", sampleFile))).Job!);

    public static Plan PlanOfTapeBook(string text) => Plan(TapeBookReader.Read(text).Job!);

    public static byte[] Pdf(Plan plan) => PdfWriter.Write(TakeoffSheet.Of(plan, plan.Basis.Job.Units, new(PaperSize.Letter))).Pdf;

    public static StakeTable Stakes(Plan plan)
    {
        StakeList stakes = StakeLister.Of(plan, plan.Basis.Job.Units);
        return new(stakes.Unit.Name(), stakes.System ?? "", [.. stakes.Stakes.Select(s => new StakeRow(s.Point, s.Northing, s.Easting, s.Elevation))]);
    }

    private static Plan Plan(Job job) => JobPlanner.Plan(job, FenceCatalog.BuiltIn(), Rules.BuiltIn(), BuiltFacts.None);
}
