namespace Tautline.Documents.Scenes;

/// <summary>Keeps texts of a drawing apart: who comes first stands, who would lie over another does not.</summary>
internal sealed class LabelBoard(double width, double height)
{
    /// <summary>The typeface of a screen may be a little wider than ours.</summary>
    private const double Wider = 1.1;

    private const double Apart = 2;

    private readonly List<(double Left, double Top, double Right, double Bottom)> taken = [];

    /// <summary>The text where there is room for it inside the drawing; nothing else.</summary>
    /// <param name="angle">Degrees, clockwise.</param>
    public SceneItem.Text? Place(SceneRole role, double x, double y, string words, double size, TextAnchor anchor = TextAnchor.Middle, string tag = "", double angle = 0)
    {
        if (words.Length == 0) return null;
        double wide = Wider * Wide(role, words, size);
        double left = anchor switch { TextAnchor.Start => 0, TextAnchor.End => -wide, _ => -wide / 2 };
        List<(double Left, double Top, double Right, double Bottom)> boxes = [.. Around(x, y, (left - Apart, -size, left + wide + Apart, size * 0.25), angle)];
        if (boxes.Exists(b => b.Left < 0 || b.Right > width || b.Top < 0 || b.Bottom > height || taken.Exists(t => t.Left < b.Right && b.Left < t.Right && t.Top < b.Bottom && b.Top < t.Bottom))) return null;
        taken.AddRange(boxes);
        return new(role, x, y, words, size, anchor, angle, tag);
    }

    /// <summary>A place that no text may lie over.</summary>
    public void Keep(double left, double top, double right, double bottom) => taken.Add((left, top, right, bottom));

    /// <summary>How wide a text is in the typeface of its role.</summary>
    public static double Wide(SceneRole role, string words, double size) => (RoleStyle.Of(role).Bold ? FontWidths.Bold : FontWidths.Regular).Width(words, size);

    /// <summary>Turned text as several upright boxes along it: one round the whole would be mostly empty.</summary>
    private static IEnumerable<(double Left, double Top, double Right, double Bottom)> Around(double x, double y, (double Left, double Top, double Right, double Bottom) box, double angle)
    {
        if (angle == 0)
        {
            yield return (x + box.Left, y + box.Top, x + box.Right, y + box.Bottom);
            yield break;
        }

        (double sin, double cos) = Math.SinCos(angle * Math.PI / 180);
        int parts = Math.Max(1, (int)Math.Ceiling((box.Right - box.Left) / (box.Bottom - box.Top)));
        for (int i = 0; i < parts; i++)
        {
            double from = box.Left + ((box.Right - box.Left) * i / parts), to = box.Left + ((box.Right - box.Left) * (i + 1) / parts);
            (double X, double Y)[] corners = [.. new[] { (from, box.Top), (to, box.Top), (to, box.Bottom), (from, box.Bottom) }.Select(c => (x + (c.Item1 * cos) - (c.Item2 * sin), y + (c.Item1 * sin) + (c.Item2 * cos)))];
            yield return (corners.Min(c => c.X), corners.Min(c => c.Y), corners.Max(c => c.X), corners.Max(c => c.Y));
        }
    }
}
