namespace Tautline.Formats.Tests.Ground;

/// <summary>Small GeoTIFFs with invented heights, written by GDAL 3.6.2 (Data/make_grids.py); embedded in the test assembly.</summary>
internal static class GdalFile
{
    public static byte[] Read(string name)
    {
        using var stream = typeof(GdalFile).Assembly.GetManifestResourceStream($"{name}.tif")!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
