using Tautline.Formats.Import;
using static Tautline.Formats.Import.ProblemSeverity;
using static Tautline.Formats.Sites.Reading.SiteFindings;

namespace Tautline.Formats.Sites.LandXml;

/// <summary>Everything the reader of LandXML shapes can say, in one place.</summary>
internal static class SiteLandXmlFindings
{
    public static Finding Note(SiteFeature of, string note) => new(Information, "Geometry", $"{of.Kind} '{of.Label}': {note}.");

    public static Finding Refused(SiteFeature of, string reason) => new(
        Warning, "NotWhole", $"{of.Kind} '{of.Label}' is left out: {reason}.", "Have it exported with the start and end of every element.");

    public static Finding NameTwice(string name) => new(
        Warning, "NameTwice", $"The point name '{name}' stands for two points. Where other elements name it, the first is meant.", "Check which one was meant.");

    public static Finding ZeroHeights(int count) => new(
        Information, "ZeroHeights", Text($"{Count(count, "point has", "points have")} a height of exactly 0, far from all others or too often to be one; they are taken as points without height."));

    public static Finding AreaDiffers(string name, double stated, double own) => new(
        Warning, "AreaDiffers", Text($"The file says parcel '{name}' has an area of {stated:0.####}; its outline has {own:0.####}."), "A side may be missing, or the file was edited.");

    public static Finding LengthDiffers(string name, double stated, double own) => new(
        Warning, "LengthDiffers", Text($"The file says alignment '{name}' is {stated:0.####} long; its elements are {own:0.####}."), "An element may be missing, or the file was edited.");

    public static readonly Finding BadEquation = new(Warning, "BadEquation", "A station equation has no staInternal or no staAhead. It is left out.", "Stations behind it may be named wrongly.");

    public static readonly Finding BadList = new(Warning, "BadList", "A list of points is not pairs or triples of numbers. The line it is of is left out.", "Have it exported again.");

    public static Finding ChainMissing(int count) => new(
        Warning, "ChainMissing", Text($"A chain names {Count(count, "point", "points")} that {(count == 1 ? "is" : "are")} not in the file before it."), "Have the points exported too.");

    public static Finding Surface(string name, int points, int faces) => new(
        Information, "Surface", Text($"Surface '{name}': {Count(points, "point", "points")}, {Count(faces, "face", "faces")}. Attach the file to the job to use it as ground."));
}
