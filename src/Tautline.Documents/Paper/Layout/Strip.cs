namespace Tautline.Documents.Paper.Layout;

/// <summary>
/// A piece of the page's content that is printed whole or not at all, as wide as the page's text,
/// its marks measured from its own top.
/// </summary>
/// <param name="Height">In points.</param>
/// <param name="Marks">What is drawn, its heights from the strip's top.</param>
/// <param name="Lines">How many lines the reader misses where it is left out: 1, or 0 for mere furniture.</param>
/// <param name="HoldsNext">A heading: worth nothing without the strip after it.</param>
internal sealed record Strip(double Height, IReadOnlyList<Mark> Marks, int Lines = 1, bool HoldsNext = false)
{
    public static Strip Gap(double height) => new(height, [], 0, true);
}
