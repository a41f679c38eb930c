using Tautline.Documents.Paper;

namespace Tautline.Papers.Paper;

/// <summary>A size of paper and how it is held.</summary>
/// <param name="Landscape">The long side lies at the top.</param>
public readonly record struct PaperFormat(PaperSize Size, bool Landscape = false)
{
    /// <summary>Points to the inch.</summary>
    public const double Inch = 72;

    /// <summary>In points.</summary>
    public double Width => Landscape ? Upright.Height : Upright.Width;

    /// <summary>In points.</summary>
    public double Height => Landscape ? Upright.Width : Upright.Height;

    /// <summary>The width text and drawings have, in points.</summary>
    public double RoomWidth => Layout.PageFrame.Of(this).Width;

    /// <summary>The height a drawing has that stands alone on its page under a head of a few lines, in points.</summary>
    public double RoomHeight => Layout.PageFrame.Of(this).Bottom - Layout.PageFrame.Of(this).Top - 130;

    // Millimetre sizes in whole points, as printers know them (ISO 216 allows 1.5 to 3 mm).
    private (double Width, double Height) Upright => Size switch
    {
        PaperSize.Letter => (612, 792),
        PaperSize.A4 => (595, 842),
        PaperSize.Tabloid => (792, 1224),
        PaperSize.A3 => (842, 1191),
        PaperSize.AnsiD => (1584, 2448),
        PaperSize.ArchD => (1728, 2592),
        PaperSize.A1 => (1684, 2384),
        _ => throw new ArgumentOutOfRangeException(nameof(Size), Size, "No such size of paper."),
    };
}
