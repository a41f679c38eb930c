using Tautline.Documents.Paper;

namespace Tautline.Documents.Tests;

/// <summary>Invented sheets for the tests.</summary>
internal static class Sheets
{
    public static PaperSheet TakeOff(int rows, PaperSize size = PaperSize.Letter) => new("Ballard yard & dock: take-off <1>")
    {
        Size = size,
        Subtitle = ["Larkspur Storage, 14 Mill Road", "6 ft fabric, 2 in mesh, 9 gauge"],
        Tables =
        [
            new PaperTable(
                "Take-off",
                [new("Item"), new("Quantity", ColumnAlign.End), new("Unit"), new("Why")],
                [.. Enumerable.Range(1, rows).Select(i => Row(i))]),
        ],
        Notes = ["Gaps under the fabric stay within 2 in."],
        Cautions = ["Call the utility locate before any digging.", "Keep clear of fabric under tension."],
        Footer = "Plan 0123456789abcdef",
    };

    private static string[] Row(int i) => [$"Line post {i}, 2.375 in × 8′ 6½″", $"{i}", "each", "one per bay less one"];
}
