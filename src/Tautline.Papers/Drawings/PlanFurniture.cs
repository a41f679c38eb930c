using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Papers.Drawings;

/// <summary>What stands round every drawing of the site from above: north, scale, legend.</summary>
internal static class PlanFurniture
{
    public const double LegendStep = 11.5;
    private const double LegendType = 6.8;

    public static void North(Sketch sketch, Phrases say)
    {
        (double x, double y) = (sketch.Width - 16, 12);
        sketch.Shape(SceneRole.Step, "", x, y, x - 5, y + 18, x, y + 13);
        sketch.Shape(SceneRole.PostTop, "", x, y, x + 5, y + 18, x, y + 13);
        sketch.Say(SceneRole.Strong, x, y + 28, say["paper.site.north"], TextAnchor.Middle, 9);
        sketch.Labels.Keep(x - 8, y - 4, x + 8, y + 30);
    }

    /// <summary>A rule across the sheet, under it the scale bar and the scale in words.</summary>
    /// <param name="onPaper">Where a ruler is of use: a screen has the bar alone.</param>
    /// <returns>How long the bar is.</returns>
    public static double ScaleBar(Sketch sketch, DrawnScale scale, double k, double top, PlanWords words, Phrases say, bool onPaper = true)
    {
        sketch.Line(SceneRole.Axis, "", 0, top, sketch.Width, top);
        (double bar, double y) = (scale.BarMetres * k, top + 22);
        for (int i = 0; i < 4; i++) sketch.Box(i % 2 == 0 ? SceneRole.Step : SceneRole.PostTop, 4 + (bar * i / 4), y, 4 + (bar * (i + 1) / 4), y + 4);
        sketch.Add(new SceneItem.Text(SceneRole.Label, 4, y - 3, "0", 6.5));
        sketch.Add(new SceneItem.Text(SceneRole.Label, 4 + bar, y - 3, scale.BarWords, 6.5));
        if (onPaper) sketch.Add(new SceneItem.Text(SceneRole.Strong, 4, y + 15, say.Say("paper.scale", ("scale", scale.Words)), 7.5));
        if (onPaper) sketch.Add(new SceneItem.Text(SceneRole.Label, 4, y + 25, say[words.Units == UnitSystem.Metric ? "paper.inMetres" : "paper.inFeet"], 6.5));
        return bar;
    }

    /// <summary>Signs with their words, in columns.</summary>
    public static void Legend(Sketch sketch, IReadOnlyList<(string Words, Action<double, double> Sign)> rows, double left, double top, int perColumn)
    {
        double wide = LegendWide(rows);
        foreach ((int i, (string words, Action<double, double> sign)) in rows.Index())
        {
            (double x, double y) = (left + (i / perColumn * wide), top + (i % perColumn * LegendStep));
            sign(x, y);
            sketch.Add(new SceneItem.Text(SceneRole.Label, x + 18, y, words, LegendType));
        }
    }

    /// <summary>Of one column.</summary>
    public static double LegendWide(IReadOnlyList<(string Words, Action<double, double> Sign)> rows)
        => rows.Select(w => LabelBoard.Wide(SceneRole.Label, w.Words, LegendType)).DefaultIfEmpty(0).Max() + 30;

    /// <summary>Metres from post to post, on average.</summary>
    public static double Apart(PlanPicture picture)
    {
        ReadOnlySpan<double> at = picture.PostsAt.Span;
        if (at.Length < 4) return 3;
        double sum = 0;
        for (int i = 2; i + 1 < at.Length; i += 2) sum += Math.Min(4, Math.Sqrt(Math.Pow(at[i] - at[i - 2], 2) + Math.Pow(at[i + 1] - at[i - 1], 2)));
        return sum / ((at.Length / 2) - 1);
    }
}
