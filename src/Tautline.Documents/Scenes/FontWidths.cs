using System.Buffers.Binary;

namespace Tautline.Documents.Scenes;

/// <summary>
/// How wide text is in the typeface of the papers, read off its own tables (OpenType 1.9: head, hhea, hmtx, cmap subtable format 4), so that a page can
/// measure without the writer of PDF. Those tables alone stand in this assembly; the outlines go with the papers. Signs the typeface lacks are as wide as its empty box.
/// </summary>
public sealed class FontWidths
{
    private readonly byte[] font;
    private readonly int advances, count, perEm, map;

    private FontWidths(string face)
    {
        using Stream resource = typeof(FontWidths).Assembly.GetManifestResourceStream(face + ".widths") ?? throw new InvalidOperationException($"The font {face} is not in this assembly.");
        font = new byte[resource.Length];
        resource.ReadExactly(font);
        perEm = U16(Table("head") + 18);
        count = U16(Table("hhea") + 34);
        advances = Table("hmtx");
        map = Subtable(Table("cmap"));
    }

    public static FontWidths Regular { get; } = new("TautlineSans-Regular");

    public static FontWidths Bold { get; } = new("TautlineSans-Bold");

    /// <summary>The width of one line in units of the type's size: points for points.</summary>
    public double Width(string text, double size)
    {
        long sum = 0;
        foreach (char sign in text) sum += U16(advances + (4 * Math.Min(Glyph(sign), count - 1)));
        return size * sum / perEm;
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(font.AsSpan(at));

    private int Table(string tag)
    {
        for (int i = 0; i < U16(4); i++)
        {
            ReadOnlySpan<byte> entry = font.AsSpan(12 + (16 * i), 16);
            if (entry[0] == tag[0] && entry[1] == tag[1] && entry[2] == tag[2] && entry[3] == tag[3]) return (int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]);
        }

        throw new InvalidOperationException($"The font has no table '{tag}'.");
    }

    private int Subtable(int cmap)
    {
        for (int i = 0; i < U16(cmap + 2); i++)
        {
            int at = cmap + (int)BinaryPrimitives.ReadUInt32BigEndian(font.AsSpan(cmap + 8 + (8 * i)));
            if (U16(at) == 4) return at;
        }

        throw new InvalidOperationException("The font has no character map of format 4.");
    }

    private int Glyph(char sign)
    {
        int segments = U16(map + 6);
        int ends = map + 14;
        (int low, int high) = (0, (segments / 2) - 1);
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (U16(ends + (2 * middle)) >= sign) high = middle;
            else low = middle + 1;
        }

        int start = ends + 2 + segments + (2 * low);
        if (U16(start) > sign) return 0;
        int shift = U16(start + segments);
        int range = start + (2 * segments);
        if (U16(range) == 0) return (sign + shift) & 0xFFFF;
        int glyph = U16(range + U16(range) + (2 * (sign - U16(start))));
        return glyph == 0 ? 0 : (glyph + shift) & 0xFFFF;
    }
}
