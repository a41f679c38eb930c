using QRCoder;

namespace Tautline.Papers.Paper.Layout;

/// <summary>The squares of a QR code (ISO/IEC 18004), with the quiet rim of four that it asks for.</summary>
internal sealed record CodeMatrix(string Text, int Size)
{
    private readonly bool[] dark = [];

    private CodeMatrix(string text, int size, bool[] dark)
        : this(text, size) => this.dark = dark;

    public bool IsDark(int row, int column) => dark[(row * Size) + column];

    /// <summary>Medium correction: paper gets wet, dirty and creased.</summary>
    public static CodeMatrix Of(string text)
    {
        using QRCodeData code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M, forceUtf8: true);
        int size = code.ModuleMatrix.Count;
        return new(text, size, [.. code.ModuleMatrix.SelectMany(row => row.Cast<bool>())]);
    }
}
