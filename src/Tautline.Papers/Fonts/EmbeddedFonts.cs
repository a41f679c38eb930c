using PdfSharp.Fonts;

namespace Tautline.Papers.Fonts;

/// <summary>
/// Gives PDFsharp the two faces that are built into this assembly, and no other: a document
/// then looks the same on every machine, and in a browser, where there are no system fonts.
/// </summary>
internal sealed class EmbeddedFonts : IFontResolver
{
    public const string Family = "Tautline Sans";
    private const string Regular = "TautlineSans-Regular";
    private const string Bold = "TautlineSans-Bold";

    private static readonly EmbeddedFonts Only = new();

    private EmbeddedFonts()
    {
    }

    /// <summary>Makes these fonts PDFsharp's own. Calling it again does nothing.</summary>
    public static void Use() => GlobalFontSettings.FontResolver = Only;

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        familyName == Family && !isItalic ? new FontResolverInfo(isBold ? Bold : Regular) : null;

    public byte[] GetFont(string faceName)
    {
        using Stream resource = typeof(EmbeddedFonts).Assembly.GetManifestResourceStream(faceName + ".ttf")
            ?? throw new InvalidOperationException($"The font {faceName} is not in this assembly.");
        byte[] bytes = new byte[resource.Length];
        resource.ReadExactly(bytes);
        return bytes;
    }
}
