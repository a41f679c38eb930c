namespace Tautline.Documents.Scenes;

/// <summary>
/// A drawing: positioned primitives, x to the right and y down, in points (1/72 in) on paper and in pixels on a screen. It is written as SVG or set on a
/// page; neither works anything out.
/// </summary>
/// <param name="Items">In the order they are drawn.</param>
/// <param name="UnitsPerMetre">Along x, of what is drawn to scale.</param>
/// <param name="Exaggeration">How many times taller than true heights are drawn.</param>
public sealed record Scene(double Width, double Height, IReadOnlyList<SceneItem> Items, double UnitsPerMetre = 0, double Exaggeration = 1)
{
    /// <summary>
    /// Metres east and north, or along and up, of the drawing's place (0, 0); nothing where it is no drawing to scale. With it a writer of files for other
    /// programs gives true coordinates.
    /// </summary>
    public (double X, double Y)? Origin { get; init; }

    /// <summary>The scale in words, such as '1 in = 20 ft'; empty where there is none.</summary>
    public string Scale { get; init; } = "";
}

/// <summary>A part of a drawing.</summary>
/// <param name="Role">What it is, and so how it looks and in which layer it lies.</param>
/// <param name="Tag">What it stands for, such as 'post 3', so that a view can point at it; empty for furniture.</param>
public abstract record SceneItem(SceneRole Role, string Tag)
{
    /// <summary>Straight strokes from point to point.</summary>
    /// <param name="Points">x and y, one after the other.</param>
    /// <param name="Closed">Back to the first, and filled as its role is.</param>
    public sealed record Path(SceneRole Role, IReadOnlyList<double> Points, bool Closed = false, string Tag = "") : SceneItem(Role, Tag);

    public sealed record Circle(SceneRole Role, double X, double Y, double Radius, string Tag = "") : SceneItem(Role, Tag);

    /// <summary>A part of a circle.</summary>
    /// <param name="From">Degrees from the way to the right, clockwise as seen.</param>
    /// <param name="Sweep">Degrees on from there, clockwise; at most 360.</param>
    public sealed record Arc(SceneRole Role, double X, double Y, double Radius, double From, double Sweep, string Tag = "") : SceneItem(Role, Tag);

    /// <summary>One line of text.</summary>
    /// <param name="X">Of its start, middle or end, as <paramref name="Anchor"/> says.</param>
    /// <param name="Y">Of its base line.</param>
    /// <param name="Size">Height of the type.</param>
    /// <param name="Angle">Degrees, clockwise.</param>
    public sealed record Text(SceneRole Role, double X, double Y, string Words, double Size, TextAnchor Anchor = TextAnchor.Start, double Angle = 0, string Tag = "") : SceneItem(Role, Tag);
}

/// <summary>Which point of a text its place is.</summary>
public enum TextAnchor
{
    Start,
    Middle,
    End,
}
