namespace Tautline.Documents.Scenes;

/// <summary>Keeps texts of a drawing apart: who comes first stands, who would lie over another does not.</summary>
internal sealed class LabelBoard(double width, double height)
{
    /// <summary>The typeface of a screen may be a little wider than ours.</summary>
    private const double Wider = 1.1;

    private const double Apart = 2;

    private readonly List<(double Left, double Top, double Right, double Bottom)> taken = [];

    /// <summary>The text where there is room for it inside the drawing; nothing else.</summary>
    public SceneItem.Text? Place(SceneRole role, double x, double y, string words, double size, TextAnchor anchor = TextAnchor.Middle, string tag = "")
    {
        if (words.Length == 0) return null;
        double wide = Wider * (RoleStyle.Of(role).Bold ? FontWidths.Bold : FontWidths.Regular).Width(words, size);
        double left = anchor switch { TextAnchor.Start => x, TextAnchor.End => x - wide, _ => x - (wide / 2) };
        (double Left, double Top, double Right, double Bottom) box = (left - Apart, y - size, left + wide + Apart, y + (size * 0.25));
        if (box.Left < 0 || box.Right > width || box.Top < 0 || box.Bottom > height || taken.Exists(t => t.Left < box.Right && box.Left < t.Right && t.Top < box.Bottom && box.Top < t.Bottom)) return null;
        taken.Add(box);
        return new(role, x, y, words, size, anchor, 0, tag);
    }

    /// <summary>A place that no text may lie over.</summary>
    public void Keep(double left, double top, double right, double bottom) => taken.Add((left, top, right, bottom));
}
