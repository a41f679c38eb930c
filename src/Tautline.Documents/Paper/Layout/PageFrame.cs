namespace Tautline.Documents.Paper.Layout;

/// <summary>The page and the part of it that takes text, in points.</summary>
internal sealed record PageFrame(double PageWidth, double PageHeight)
{
    /// <summary>Six tenths of an inch: what any office printer can reach.</summary>
    private const double Margin = 43.2;

    /// <summary>Where text starts, from the left edge of the paper.</summary>
    public double Left { get; } = Margin;

    /// <summary>Where text starts, from the top edge.</summary>
    public double Top { get; } = Margin;

    public double Width => PageWidth - (2 * Margin);

    public double Bottom => PageHeight - Margin;

    public static PageFrame Of(PaperSize size) => size switch
    {
        PaperSize.Letter => new(612, 792),
        PaperSize.A4 => new(595, 842),
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "Letter or A4."),
    };
}
