using Tautline.Formats.Import;
using static Tautline.Formats.Ground.GroundFindings;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>Everything the GeoTIFF reader can say, in one place.</summary>
internal static class GeoTiffFindings
{
    private const string SaveAgain = "Have it saved again as a GeoTIFF of heights: uncompressed, LZW or DEFLATE, one band.";

    // The file
    public static readonly Finding NotTiff = new(
        Error, "NotTiff",
        "The file begins like a TIFF, but its directory, or what it points to, is not in it: it is damaged or was cut off.",
        "Fetch the file again.");

    public static Finding BadSize(long columns, long rows) => new(
        Error, "BadSize",
        Text($"The file says it has {columns:N0} columns and {rows:N0} rows."),
        "Fetch the file again.");

    public static readonly Finding BadBlocks = new(
        Error, "BadBlocks",
        "The list of the file's strips or tiles is missing, too short or makes no sense: the file is damaged or was cut off.",
        "Fetch the file again.");

    public static readonly Finding Hollow = new(
        Error, "Hollow",
        "The file is thousands of times smaller than the grid it says it holds.",
        "Check that it is whole, or state the window around the site.");

    public static Finding BlockCutOff(long block) => new(
        Error, "BlockCutOff",
        Text($"Strip or tile {block} ends early or cannot be decompressed: the file is damaged or was cut off."),
        "Fetch the file again. Nothing of a damaged file is used.");

    public static Finding Picture(long photometric) => new(
        Error, "Picture",
        Text($"The file is a picture (its colours are of kind {photometric}), not a grid of heights."),
        "Ask for the terrain model itself, not a picture of it.");

    public static Finding CompressionNotRead(long code) => new(
        Error, "CompressionNotRead",
        Text($"The file is compressed with {CompressionName(code)}, which is not read."),
        SaveAgain);

    public static Finding SampleNotRead(long bits, long kind) => new(
        Error, "SampleNotRead",
        Text($"The file holds {KindName(kind)} of {bits} bits, which are not read."),
        "Have it saved with whole numbers of 8, 16 or 32 bits or floating numbers of 32 or 64.");

    public static readonly Finding BandsDiffer = new(
        Error, "SampleNotRead",
        "The file's bands have different numbers of bits, which is not read.",
        SaveAgain);

    public static Finding PredictorNotRead(long code) => new(
        Error, "PredictorNotRead",
        Text($"The file uses predictor {code}, which is not read with its kind of numbers."),
        SaveAgain);

    public static readonly Finding FillOrderNotRead = new(
        Error, "FillOrderNotRead",
        "The bits of the file's bytes run the other way round, which is not read.",
        SaveAgain);

    public static Finding BandsLeftOut(long bands) => new(
        Warning, "BandsLeftOut",
        Text($"The file has {bands} bands. The first is read as heights, the others are left out."),
        "Check that the first is the ground.");

    public static Finding BlocksMissing(int count) => new(
        Information, "BlocksMissing",
        Text($"{Count(count, "strip or tile is", "strips or tiles are")} left out of the file; there is no ground in them."));

    public static Finding NoDataBad(string text) => new(
        Warning, "NoDataBad",
        $"The mark of cells without ground is '{text}', which is no number. It is passed over.",
        "State the mark.");

    public static Finding Scaled(double scale, double offset) => new(
        Information, "Scaled",
        Text($"The file says its values are to be multiplied by {scale} and {offset} added; that was done."));

    // Its place
    public static readonly Finding NoPlace = new(
        Error, "NoPlace",
        "The file does not say where it lies: it has no georeference.",
        "Have it saved with it. A world file (.tfw) beside it is not read.");

    public static readonly Finding ControlPoints = new(
        Error, "NoPlace",
        "The file is placed by several control points, not by a corner and a size of cells.",
        "Have it rectified to an upright grid.");

    public static readonly Finding Turned = new(
        Error, "Turned",
        "The grid is turned or slanted against north, which is not read.",
        "Have it warped to an upright grid.");

    public static readonly Finding RowsFromSouth = new(
        Error, "RowsFromSouth",
        "The grid's rows run from south to north, which is not read.",
        "Have it saved with the northern row first.");

    // Its system
    public static readonly Finding NoKeys = new(Information, "NoKeys", "The file has a place but says nothing of its coordinate system.");

    public static Finding UnitNotKnown(string what, int code) => new(
        Warning, "UnitNotKnown",
        Text($"The file's unit of {what} has the code {code}, which is none of metre, foot, US survey foot."),
        "State the unit.");

    public static Finding HeightUnitsContradict(string claims) => new(
        Warning, "HeightUnitsContradict",
        $"The file contradicts itself: {claims}.",
        "State the unit of the heights.");

    public static Finding HeightSystem(string name) => new(Information, "HeightSystem", $"The file says its heights are {name}.");

    public static Finding HeightSystemNotKnown(int code) => new(
        Warning, "HeightSystemNotKnown",
        Text($"The file says its heights are EPSG:{code}, which is not among those this program knows."),
        "State the unit of the heights.");

    public static Finding Ellipsoid(string name) => new(
        Warning, "EllipsoidHeights",
        $"The file says its heights count from the {name}. They are up to 100 m off heights above the sea; slopes are not touched.",
        "Do not mix them with levelled heights.");

    public static Finding Depths(string name) => new(
        Error, "Depths",
        $"The file says its values are depths ({name}), counted downwards.",
        "Ask for heights.");

    private static string KindName(long kind) => kind switch
    {
        1 => "whole numbers",
        2 => "whole numbers with sign",
        3 => "floating numbers",
        5 or 6 => "complex numbers",
        _ => "values of an unknown kind",
    };

    private static string CompressionName(long code) => code switch
    {
        2 or 3 or 4 => "a fax code",
        6 or 7 => "JPEG",
        34887 => "LERC",
        34925 => "LZMA",
        50000 => "Zstandard",
        50001 => "WebP",
        50002 => "JPEG XL",
        _ => Text($"the method {code}"),
    };
}
