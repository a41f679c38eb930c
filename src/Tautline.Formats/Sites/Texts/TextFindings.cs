using Tautline.Formats.Import;

namespace Tautline.Formats.Sites.Texts;

internal static class TextFindings
{
    public static readonly Finding NoPosition = new(
        ProblemSeverity.Warning, "NoPosition", "The line has numbers and is no latitude and longitude.", "Write it as 44.0570 N, 123.0699 W, or as degrees, minutes and seconds with N or S and E or W.");

    public static readonly Finding BadWkt = new(
        ProblemSeverity.Error, "BadShape", "The line is no shape as well-known text. It is left out.", "A shape is LINESTRING (x y, x y), POLYGON ((x y, ...)) or POINT (x y), brackets and all.");
}
