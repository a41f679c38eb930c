namespace Tautline.Papers.Paper.Layout;

/// <summary>The page and the part of it that takes text, in points.</summary>
internal sealed record PageFrame(double PageWidth, double PageHeight)
{
    /// <summary>Six tenths of an inch: what any office printer can reach.</summary>
    private const double Margin = 43.2;

    /// <summary>Where text starts, from the left edge of the paper.</summary>
    public double Left { get; init; } = Margin;

    /// <summary>Where text starts, from the top edge.</summary>
    public double Top { get; init; } = Margin;

    public double Width { get; init; } = PageWidth - (2 * Margin);

    public double Bottom { get; init; } = PageHeight - Margin;

    public static PageFrame Of(PaperFormat format) => new(format.Width, format.Height);
}
