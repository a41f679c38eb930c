namespace Tautline.Documents.Paper;

/// <summary>A size of paper.</summary>
public enum PaperSize
{
    /// <summary>8½ by 11 inches.</summary>
    Letter,

    /// <summary>210 by 297 millimetres.</summary>
    A4,

    /// <summary>11 by 17 inches.</summary>
    Tabloid,

    /// <summary>297 by 420 millimetres.</summary>
    A3,

    /// <summary>22 by 34 inches.</summary>
    AnsiD,

    /// <summary>24 by 36 inches.</summary>
    ArchD,

    /// <summary>594 by 841 millimetres.</summary>
    A1,
}
