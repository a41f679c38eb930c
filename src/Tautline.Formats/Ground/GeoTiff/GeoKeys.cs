namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>Keys of the GeoKeyDirectory (OGC GeoTIFF 1.1, section 7).</summary>
internal enum GeoKey
{
    ModelType = 1024,
    RasterType = 1025,
    Citation = 1026,
    GeodeticCrs = 2048,
    GeodeticCitation = 2049,
    ProjectedCrs = 3072,
    ProjectedCitation = 3073,
    ProjectedUnits = 3076,
    VerticalCrs = 4096,
    VerticalCitation = 4097,
    VerticalUnits = 4099,
}

/// <summary>The GeoKeyDirectory: short numbers and texts by key.</summary>
internal sealed class GeoKeys
{
    private const int MostKeys = 1024;

    private readonly Dictionary<int, long> _numbers = [];
    private readonly Dictionary<int, string> _texts = [];

    public GeoKeys(TiffDirectory tiff)
    {
        if (tiff.Numbers(TiffTag.GeoKeyDirectory) is not [_, _, _, _, ..] entries) return;
        var texts = tiff.Text(TiffTag.GeoAsciiParameters) ?? "";
        for (var i = 4; i + 3 < entries.Length && i / 4 <= Math.Min(entries[3], MostKeys); i += 4) Add(entries.AsSpan(i, 4), texts);
    }

    public bool IsEmpty => _numbers.Count == 0 && _texts.Count == 0;

    /// <summary>A number; null where the key is absent, or 0, which is "undefined".</summary>
    public int? Number(GeoKey key) => _numbers.TryGetValue((int)key, out var number) && number is > 0 and <= int.MaxValue ? (int)number : null;

    public string? Text(GeoKey key) => _texts.GetValueOrDefault((int)key);

    private void Add(ReadOnlySpan<long> entry, string texts)
    {
        var (key, place, count, value) = ((int)entry[0], entry[1], entry[2], entry[3]);
        if (place == 0) _numbers.TryAdd(key, value);
        if (place == (int)TiffTag.GeoAsciiParameters && value + count <= texts.Length && count > 0)
            _texts.TryAdd(key, texts.Substring((int)value, (int)count).TrimEnd('|', '\0', ' '));
    }
}
