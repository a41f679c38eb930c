using Tautline.Documents.Paper;
using Tautline.Papers.Fonts;
using Tautline.Papers.Paper;
using Tautline.Papers.Paper.Layout;

namespace Tautline.Documents.Tests;

/// <summary>Invented papers for the tests.</summary>
internal static class Sheets
{
    public static PaperDocument Of(params PaperSheet[] sheets) => new("Ballard yard & dock") { Sheets = sheets, Footer = "Plan 0123456789abcdef" };

    public static PaperDocument TakeOff(int rows, PaperSize size = PaperSize.Letter) => new("Ballard yard & dock: take-off <1>")
    {
        Format = new(size),
        Sheets =
        [
            new PaperSheet("Ballard yard & dock: take-off <1>")
            {
                Head = ["Larkspur Storage, 14 Mill Road", "6 ft fabric, 2 in mesh, 9 gauge"],
                Blocks = [Table(rows), new PaperBlock.Words("Gaps under the fabric stay within 2 in.")],
                Cautions = ["Call the utility locate before any digging.", "Keep clear of fabric under tension."],
            },
        ],
        Footer = "Plan 0123456789abcdef",
    };

    public static PaperTable Table(int rows) =>
        new("Take-off", [new("Item"), new("Quantity", ColumnAlign.End), new("Unit"), new("Why")], [.. Enumerable.Range(1, rows).Select(Row)]);

    public static IReadOnlyList<LaidPage> Lay(PaperDocument paper)
    {
        EmbeddedFonts.Use();
        using var measure = new TextMeasure();
        return new DocumentLayout(measure, paper).Pages();
    }

    public static IEnumerable<Mark.Words> Words(LaidPage page) => page.Marks.OfType<Mark.Words>();

    private static string[] Row(int i) => [$"Line post {i}, 2.375 in × 8′ 6½″", $"{i}", "each", "one per bay less one"];
}
