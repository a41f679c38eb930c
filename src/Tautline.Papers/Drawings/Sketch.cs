using Tautline.Documents.Scenes;

namespace Tautline.Papers.Drawings;

/// <summary>A drawing in the making: strokes, texts that keep clear of each other, dimensions.</summary>
internal sealed class Sketch(double width, double height)
{
    /// <summary>Height of the type of labels, in points.</summary>
    public const double Type = 7.5;

    private readonly List<SceneItem> items = [];

    public LabelBoard Labels { get; } = new(width, height);

    public double Width => width;

    public double Height => height;

    public Scene Done(double unitsPerMetre = 0, string scale = "", (double X, double Y)? origin = null) => new(width, height, items, unitsPerMetre) { Scale = scale, Origin = origin };

    public void Line(SceneRole role, string tag, params double[] points) => items.Add(new SceneItem.Path(role, points, false, tag));

    public void Shape(SceneRole role, string tag, params double[] points) => items.Add(new SceneItem.Path(role, points, true, tag));

    public void Box(SceneRole role, double left, double top, double right, double bottom, string tag = "")
        => Shape(role, tag, left, top, right, top, right, bottom, left, bottom);

    public void Circle(SceneRole role, double x, double y, double radius, string tag = "") => items.Add(new SceneItem.Circle(role, x, y, radius, tag));

    public void Add(SceneItem item) => items.Add(item);

    /// <summary>A text where there is room for it; says whether there was.</summary>
    public bool Say(SceneRole role, double x, double y, string words, TextAnchor anchor = TextAnchor.Middle, double size = Type, string tag = "", double angle = 0)
    {
        if (Labels.Place(role, x, y, words, size, anchor, tag, angle) is not { } text) return false;
        items.Add(text);
        return true;
    }

    /// <summary>The first of several places where there is room.</summary>
    public bool Say(SceneRole role, string words, double size, string tag, params ReadOnlySpan<(double X, double Y, TextAnchor Anchor)> places)
    {
        foreach ((double x, double y, TextAnchor anchor) in places)
            if (Say(role, x, y, words, anchor, size, tag)) return true;
        return false;
    }

    /// <summary>A measure between two places at one height, its ticks slanted, its words over it; witness lines come down or up to what is measured.</summary>
    /// <param name="y">Of the line of the measure.</param>
    /// <param name="fromY">Where the witness lines begin.</param>
    public void Across(double left, double right, double y, double fromY, string words)
    {
        double over = Math.Sign(y - fromY) * 3;
        Line(SceneRole.Dimension, "", left, fromY, left, y + over);
        Line(SceneRole.Dimension, "", right, fromY, right, y + over);
        Line(SceneRole.Dimension, "", left, y, right, y);
        Tick(left, y);
        Tick(right, y);
        double wide = LabelBoard.Wide(SceneRole.Label, words, Type);
        if (wide + 8 < right - left) Say(SceneRole.Label, (left + right) / 2, y - 2, words);
        else Say(SceneRole.Label, words, Type, "", (right + 5, y + (Type * 0.35), TextAnchor.Start), (left - 5, y + (Type * 0.35), TextAnchor.End), ((left + right) / 2, y - 3, TextAnchor.Middle));
    }

    /// <summary>A measure between two heights, its words beside it.</summary>
    /// <param name="x">Of the line of the measure.</param>
    /// <param name="fromX">Where the witness lines begin.</param>
    public void Upright(double top, double bottom, double x, double fromX, string words)
    {
        double over = Math.Sign(x - fromX) * 3;
        Line(SceneRole.Dimension, "", fromX, top, x + over, top);
        Line(SceneRole.Dimension, "", fromX, bottom, x + over, bottom);
        Line(SceneRole.Dimension, "", x, top, x, bottom);
        Tick(x, top);
        Tick(x, bottom);
        TextAnchor beside = over < 0 ? TextAnchor.End : TextAnchor.Start;
        double at = x + over;
        double middle = ((top + bottom) / 2) + (Type * 0.35);
        Say(SceneRole.Label, words, Type, "", (at, middle, beside), (at, middle - (Type * 1.4), beside), (at, middle + (Type * 1.4), beside), (at, top - 3, beside));
    }

    /// <summary>A number in a ring with a line to what it stands for.</summary>
    public void Callout(double x, double y, double atX, double atY, string number)
    {
        Line(SceneRole.Dimension, "", x, y, atX, atY);
        Circle(SceneRole.Callout, x, y, 6.5);
        items.Add(new SceneItem.Text(SceneRole.Callout, x, y + 2.4, number, 7, TextAnchor.Middle));
        Labels.Keep(x - 7, y - 7, x + 7, y + 7);
    }

    private void Tick(double x, double y) => Line(SceneRole.Axis, "", x - 2, y + 2, x + 2, y - 2);
}
