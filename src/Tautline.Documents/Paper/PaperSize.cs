namespace Tautline.Documents.Paper;

/// <summary>A size of paper, held upright.</summary>
public enum PaperSize
{
    /// <summary>8½ by 11 inches: 612 by 792 points.</summary>
    Letter,

    /// <summary>210 by 297 millimetres, taken as 595 by 842 points.</summary>
    A4,
}
