using System.Text;
using Tautline.Documents.Paper;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Office;

namespace Tautline.Desk;

/// <summary>
/// All that touches the writers of papers, in one class: they are fetched late, and a method that so much as names one of their types cannot even begin before
/// they are there. Call <see cref="Late.PaperAsync"/> first, and <see cref="Late.FormatsAsync"/> where stakes are wanted.
/// </summary>
internal static class PaperPress
{
    public static PrintedPaper Takeoff(Plan plan, UnitSystem units) => PdfWriter.Write(TakeoffSheet.Of(plan, units, new(PaperSize.Letter)));

    /// <param name="pause">Called between pieces of the work with the words for it, how many are done, of how many.</param>
    public static async Task<PrintedPaper> PdfAsync(PaperKind kind, Plan plan, UnitSystem units, Phrases say, PaperSize size, Func<string, int, int, Task> pause)
    {
        PaperChoice choice = new(units, say, new(size)) { Stakes = Stakes(plan, units) };
        PaperDocument paper = await PaperMaker.OfAsync(kind, plan, choice, (n, of) => pause("papers.sheet", n, of));
        return await PdfWriter.WriteAsync(paper, (n, of) => pause("papers.page", n, of));
    }

    /// <summary>One figure worked out, with what it rests on.</summary>
    public static PrintedPaper Calculation(Plan plan, FactKey fact, UnitSystem units, Phrases say, PaperSize size) => PdfWriter.Write(CalculationPaper.Of(plan, [fact], new(units, say, new(size))));

    public static PrintedPaper Revision(Plan before, Plan after, UnitSystem units, Phrases say, PaperSize size) => PdfWriter.Write(RevisionPaper.Of(before, after, new(units, say, new(size))));

    public static byte[] Svg(Plan plan, UnitSystem units, Phrases say, PaperSize size, string title) => Encoding.UTF8.GetBytes(SvgWriter.File(Site(plan, units, say, size), title));

    public static byte[] Dxf(Plan plan, UnitSystem units, Phrases say, PaperSize size) => DxfWriter.Write(Site(plan, units, say, size), units);

    public static Task<byte[]> XlsxAsync(Plan plan, UnitSystem units, Phrases say) => XlsxWriter.WriteAsync(PlanBook.Of(plan, new(units, say, default)));

    private static Scene Site(Plan plan, UnitSystem units, Phrases say, PaperSize size) => DrawingPaper.SiteScene(plan, new(units, say, new(size)))!;

    private static StakeTable Stakes(Plan plan, UnitSystem units)
    {
        StakeList stakes = StakeLister.Of(plan, units);
        return new(stakes.Unit.Name(), stakes.System ?? "", [.. stakes.Stakes.Select(s => new StakeRow(s.Point, s.Northing, s.Easting, s.Elevation))]);
    }
}
