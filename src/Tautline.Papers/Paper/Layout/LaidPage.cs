namespace Tautline.Papers.Paper.Layout;

/// <summary>A page with everything in its place.</summary>
/// <param name="Sheet">The name of the sheet it belongs to.</param>
/// <param name="First">The sheet begins here.</param>
/// <param name="Boxes">Head, strips, cautions and foot from the top down: none touches another, which tests hold.</param>
internal sealed record LaidPage(string Sheet, bool First, PageFrame Frame, IReadOnlyList<Mark> Marks, IReadOnlyList<PageBox> Boxes);

/// <summary>A part of the page over the whole width of its text.</summary>
internal sealed record PageBox(string Kind, double Top, double Height)
{
    public double Bottom => Top + Height;
}
