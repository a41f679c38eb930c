using Tautline.Formats.Import;
using static Tautline.Formats.Ground.GroundFindings;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Ground.LandXml;

/// <summary>Everything the LandXML reader can say, in one place.</summary>
internal static class LandXmlFindings
{
    private const string SaveAgain = "Have it exported again.";

    public static readonly Finding NotXml = new(
        Error, "NotXml",
        "The text is not XML here, or was cut off here.",
        "Fetch or export the file again. Nothing of a damaged file is used.");

    public static readonly Finding LongTag = new(Error, "NotXml", "A tag is longer than a million letters.", "Check what wrote the file.");

    public static readonly Finding Dtd = new(
        Error, "NotXml",
        "The file has a document type declaration, which is not read for safety.",
        "Remove the DOCTYPE line, or export as LandXML.");

    public static readonly Finding TooDeep = new(
        Error, "TooDeep",
        "Elements lie more than 64 deep.",
        "A surface needs about ten levels. Check what wrote the file.");

    public static Finding NotLandXml(string root) => new(
        Error, "NotLandXml",
        $"The file is XML, but its first element is '{root}'.",
        "A LandXML file begins with <LandXML>.");

    public static readonly Finding NoSurface = new(
        Error, "NoSurface",
        "The file holds no surface.",
        "Have the surface exported too. Points, parcels and alignments are not read as ground.");

    public static Finding SurfaceNotFound(string wanted, IEnumerable<string> names) => new(
        Error, "SurfaceNotFound",
        $"There is no surface '{wanted}'. The file has: {string.Join(", ", names)}.",
        "Name one of them, or '#2' for the second.");

    public static Finding SeveralOfName(string wanted, int count) => new(
        Error, "SurfaceNotFound", Text($"{count} surfaces are named '{wanted}'."), "Choose by order: '#2' for the second.");

    public static string SurfaceQuestion(int count) => Text($"The file has {count} surfaces. Which is the ground as it is now?");

    public static Finding NotTin(string name, string type) => new(
        Error, "NotTin", $"The surface '{name}' is of the kind '{type}'.", "Have it exported as a TIN (points and faces).");

    public static Finding NoFaces(string name) => new(
        Error, "NoFaces",
        $"The surface '{name}' has no face that is seen.",
        "Have it exported with its faces. The points alone are not triangulated here.");

    public static Finding TooMany(int most) => new(
        Error, "TooManyPoints",
        Text($"The surface has more than {most:N0} points, or that many faces twice."),
        "Cut the site out of it and export that.");

    // Points and faces
    public static readonly Finding NoId = new(
        Warning, "BadPoint",
        "A point has no whole number as its id, so no face can name it. It is left out.",
        SaveAgain);

    public static Finding BadPoint(long id) => new(
        Warning, "BadPoint",
        Text($"Point {id} is not north, east and height as three numbers. It is left out."),
        SaveAgain);

    public static Finding PointElsewhere(long id) => new(
        Warning, "BadPoint",
        Text($"Point {id} refers to a point elsewhere, which is not read. It is left out."),
        SaveAgain);

    public static Finding IdTwice(long id) => new(
        Error, "IdTwice",
        Text($"The id {id} stands for a second point at another place. Which one the faces mean cannot be told."),
        SaveAgain);

    public static Finding BadFace(int corners) => new(
        Warning, "BadFace",
        Text($"A face does not name three points but {corners}. It is left out."),
        SaveAgain);

    public static Finding FaceWithoutPoint(long id) => new(
        Warning, "FaceWithoutPoint",
        Text($"A face names point {id}, which is not there. The face is left out: the ground has a hole."),
        SaveAgain);

    // What the surface says of itself
    public static Finding Surface(string name, int points, int faces, int invisible) => new(
        Information, "Surface",
        Text($"Surface '{name}': {Count(points, "point", "points")}, {Count(faces, "face", "faces")} seen and {invisible:N0} marked as not seen, which are left out."));

    public static Finding PlanShapes(int breaklines, int boundaries) => new(
        Information, "PlanShapes",
        Text($"{Count(breaklines, "breakline", "breaklines")} and {Count(boundaries, "boundary", "boundaries")} of the source data are kept for the map; the faces alone are the ground."));

    public static Finding Trimmed(int boundaries) => new(
        Warning, "Trimmed",
        Text($"The surface has {Count(boundaries, "boundary", "boundaries")} but no face marked as not seen. The ground is cut along them."),
        "Look at the ground near buildings and at its rim.");

    public static Finding AreaDiffers(string which, double stated, double ours) => new(
        Warning, "AreaDiffers",
        Text($"The file says the surface's {which} is {stated:0.####}; its faces make {ours:0.####}."),
        "Some faces may be missing, or the file was edited.");

    public static Finding HeightsDiffer(double lowest, double highest, double ourLowest, double ourHighest) => new(
        Information, "HeightsDiffer",
        Text($"The file says heights {lowest:0.###} to {highest:0.###}; the faces use {ourLowest:0.###} to {ourHighest:0.###}."));

    public static Finding BadLine(string kind) => new(
        Warning, "BadLine",
        $"A {kind} has something other than pairs or triples of numbers. It is left out of the map; the ground is not touched.");

    // Units
    public static Finding UnitNotKnown(string attribute, string unit) => new(
        Warning, "UnitNotKnown",
        $"The file's {attribute} is '{unit}', which is none of metre, foot, US survey foot.",
        "State the unit.");

    public static Finding FootTaken => new(
        Information, "FootTaken",
        "The file says 'foot', which LandXML keeps apart from 'USSurveyFoot', so the international foot is taken. Some programs write it for either.",
        "At two million feet the two lie four feet apart: check which was meant.");

    public static Finding HeightUnitTaken(string unit) => new(
        Information, "HeightUnitTaken",
        $"The file gives no unit of heights of its own; they are taken in {unit} like the plan.",
        "State their unit if it is another.");
}
