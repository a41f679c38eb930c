namespace Tautline.Papers.Paper.Layout;

/// <summary>A piece of a sheet that is never broken, as wide as the page's text, its marks measured from its own top.</summary>
/// <param name="Height">In points.</param>
/// <param name="Marks">What is drawn, its heights from the strip's top.</param>
/// <param name="HoldsNext">A heading: worth nothing without the strip after it.</param>
/// <param name="Repeat">What stands over it again where it comes first on a page: the heads of its table.</param>
internal sealed record Strip(double Height, IReadOnlyList<Mark> Marks, bool HoldsNext = false, IReadOnlyList<Strip>? Repeat = null)
{
    /// <summary>White space; left out at the top of a page.</summary>
    public bool IsGap => Marks.Count == 0;

    /// <summary>Nothing after it stands on the same page.</summary>
    public bool EndsPage { get; init; }

    /// <summary>Where it ends a page: only the sheet's first.</summary>
    public bool OfFirst { get; init; }

    public static Strip Gap(double height) => new(height, [], true);
}
