using System.Runtime.CompilerServices;
using Tautline.Documents.Paper;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Log;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Built;

namespace Tautline.FieldScreens;

/// <summary>All of the as-built that touches the writers of papers, which are fetched late: see <see cref="Desk.Late.PaperAsync"/>.</summary>
internal static class BuiltPress
{
    // A phone is about 330 px wide: drawn smaller and shown as wide as the screen, so that the type can be read in the sun.
    private const double Wide = 225;
    private const double Tall = 320;

    // Not drawn into its caller, which could not begin then before the papers are there.
    /// <summary>The drawing as SVG for the page; empty where there is nothing to draw.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static string Svg(BuiltRecord record, UnitSystem units, Phrases say)
        => AsBuiltDrawing.Of(record, Wide, Tall, new(units), say, onPaper: false) is { } scene ? SvgWriter.Fragment(scene) : "";

    [MethodImpl(MethodImplOptions.NoInlining)]
    public static PrintedPaper Pdf(BuiltRecord record, LogState log, UnitSystem units, Phrases say, PaperSize size)
        => PdfWriter.Write(AsBuiltPaper.Of(record, log, new(units, say, new(size)), at => Tautline.Desk.When.Text(DateTimeOffset.FromUnixTimeMilliseconds(at))));
}
