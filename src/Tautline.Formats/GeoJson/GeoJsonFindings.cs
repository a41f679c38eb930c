using System.Globalization;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.GeoJson;

/// <summary>Everything the GeoJSON reader can say, in one place.</summary>
internal static class GeoJsonFindings
{
    private const string StateIt = "State the coordinate system the file was written in (an EPSG number, or local metres or feet) and read it again.";

    // The text itself
    public static readonly Finding Empty = new(Error, "Empty", "The file is empty.", "A GeoJSON file holds one JSON object.");

    public static readonly Finding RootNotObject =
        new(Error, "NotGeoJson", "The file does not begin with a JSON object.", "A GeoJSON file is one object with a \"type\", such as FeatureCollection.");

    public static readonly Finding SeveralTexts =
        new(Error, "SeveralTexts", "A second JSON text follows the first.", "Save as one FeatureCollection; one feature per line is another format.");

    public static readonly Finding MoreAfterEnd =
        new(Error, "MoreAfterEnd", "Something follows after the end of the JSON object.", "Remove it, or save the file again.");

    public static readonly Finding TooDeep =
        new(Error, "TooDeep", $"Arrays and objects lie more than {GeoJsonParser.DeepestNesting} deep.", "A line needs about six levels. Check what wrote the file.");

    public static Finding TooLarge(long bytes, long most) =>
        new(Error, "TooLarge", Text($"The file has {bytes:N0} bytes; at most {most:N0} are read."), "Save only the fence lines.");

    public static Finding NotUtf8 => new(Error, "NotUtf8", "The text is not UTF-8 from here on.", "Save the file as UTF-8.");

    public static Finding Utf16 => new(Error, "NotUtf8", "The text is UTF-16.", "Save the file as UTF-8.");

    public static Finding CutOff(int open) => new(
        Error, "CutOff",
        open > 0 ? Text($"The file ends in the middle: {open} brackets are still open.") : "The file ends in the middle.",
        "Fetch or save the file again. Nothing of a cut-off file is used.");

    public static Finding NotJson(string found) => new(
        Error, "NotJson", found.Length == 0 ? "The text is not JSON here." : $"The text is not JSON here: '{found}'.", HintFor(found));

    private static string HintFor(string found) =>
        found.StartsWith("NaN", StringComparison.Ordinal) || found.Contains("Inf", StringComparison.Ordinal)
            ? "JSON has no such number: a height that is not known is left out."
            : "Save the file again, or mend this place.";

    // Objects and geometries
    public static Finding NoType => new(Error, "NoType", "An object has no \"type\".", "It should be a Feature or a geometry such as LineString.");

    public static Finding UnknownType(string type) => new(
        Error, "UnknownType", $"The type '{type}' is not one of GeoJSON's.",
        type == "Topology" ? "This is TopoJSON. Save it as GeoJSON." : "Use LineString, Polygon, their Multi kinds, GeometryCollection, Feature or FeatureCollection.");

    public static Finding MissingMember(string type, string member) =>
        new(Error, "MissingMember", $"A {type} has no \"{member}\" of the right kind.", $"\"{member}\" should be an array.");

    public static Finding WrongNesting(string type, string want) =>
        new(Error, "WrongNesting", $"The coordinates of this {type} are not nested as they should be.", $"They should be {want}.");

    public static Finding NotLocated(int count) =>
        new(Information, "NotLocated", Text($"{Count(count, "feature has", "features have")} no geometry and {Are(count)} passed over."));

    public static Finding PointsIgnored(int count) =>
        new(Information, "PointsIgnored", Text($"{Count(count, "point geometry is", "point geometries are")} passed over: only lines are read."));

    public static Finding NoLines => new(Error, "NoLines", "The file holds no line.", "A fence line is a LineString or the ring of a Polygon.");

    // Lines
    public static Finding BadPosition(string line, PositionFault fault) => fault switch
    {
        PositionFault.TooFewNumbers => BadPosition(line, "has fewer than two numbers"),
        PositionFault.NotFinite => BadPosition(line, "has a number too large to be one"),
        _ => BadPosition(line, "has something other than numbers"),
    };

    private static Finding BadPosition(string line, string what) =>
        new(Error, "BadPosition", $"A position of '{line}' {what}. The line is left out.", "A position is [east, north] or [longitude, latitude], with an optional height.");

    public static Finding TooFewPoints(string line, int places) => new(
        Error, "TooFewPoints", Text($"'{line}' has only {Count(places, "place", "places")} that differ. It is left out."),
        "An open line needs two, a ring three.");

    public static Finding RingNotClosed(string line) =>
        new(Warning, "RingNotClosed", $"The ring '{line}' does not end where it begins. It is closed with one more leg.", "Check that no corner is missing.");

    public static Finding OutAndBack(string line) =>
        new(Warning, "OutAndBack", $"'{line}' goes to one place and back the same way. It is kept as an open line.", "Check that it was meant to be fenced twice.");

    public static Finding NearlyClosed(string line, double gap) => new(
        Information, "NearlyClosed", Text($"'{line}' ends {gap:0.000} m from where it begins. It is kept open."), "Close it if a loop was meant.");

    public static Finding RepeatsDropped(int count) =>
        new(Information, "RepeatsDropped", Text($"{Count(count, "position", "positions")} at the same place as the one before {Are(count)} dropped."));

    public static Finding HeightsDropped(int count) => new(
        Warning, "HeightsDropped",
        Text($"{Count(count, "dropped position", "dropped positions")} had another height than the one before; the first height is kept."),
        "If a wall or a step was meant, give it two places.");

    // Coordinate systems
    public static Finding SystemClaimed(SystemClaim claim, string verdict) => new(
        Error, "SystemClaimed",
        $"The file says in \"{claim.Member}\" that its coordinates are {claim.Text}. GeoJSON itself has only longitude and latitude, and such a claim may be wrong. {verdict}".TrimEnd(),
        StateIt);

    public static Finding ClaimContradicts(SystemClaim claim, string stated, string verdict) => new(
        Warning, "ClaimContradicts", $"The file says in \"{claim.Member}\" that its coordinates are {claim.Text}; {stated} was stated and is used. {verdict}".TrimEnd(),
        "Check on a map that the outline lies where the site is.");

    public static Finding ClaimIsNull(SystemClaim claim) => new(
        Warning, "ClaimIsNull", $"The file says in \"{claim.Member}\" that its coordinate system is not known. It is read as longitude and latitude.", StateIt);

    public static Finding NotDegrees(double x, double y) => new(
        Error, "NotDegrees", Text($"The position [{x}, {y}] is not a longitude and latitude, so the coordinates are of another system."), StateIt);

    public static Finding Swapped(double x, double y) => new(
        Error, "Swapped", Text($"The position [{x}, {y}] has a latitude beyond 90 degrees: latitude seems to stand before longitude."),
        "GeoJSON puts longitude first. Swap the two numbers of every position.");

    public static Finding UnknownSystem(int code) => new(
        Error, "UnknownSystem", Text($"EPSG:{code} is not among the systems this program knows."),
        "Have the outline saved as longitude and latitude, in UTM, or in a listed state grid.");

    public static Finding RefusedSystem(RefusedSystem system) => new(
        Error, "RefusedSystem", Text($"EPSG:{system.EpsgCode}, {system.Name}, is not used for fence lengths: {system.Reason}."),
        "Have the outline saved as longitude and latitude.");

    public static Finding OutsideArea(string system, string where, string verdict) => new(
        Error, "OutsideArea", $"Read as {system} the outline {where}. {verdict}".TrimEnd(), "Check the system and its unit.");

    public static Finding NearArea(string system, GeographicPoint middle) => new(
        Warning, "OutsideArea", $"{system} is not meant for {middle}, the middle of the outline, but lies close by.", "Check the system.");

    public static Finding OutsideUtm(double latitude) => new(
        Error, "OutsideUtm", Text($"The outline reaches {latitude:0.##} degrees of latitude; UTM ends at 84 north and 80 south."), "State a local system.");

    public static Finding OutsideNad83(GeographicPoint middle) => new(
        Error, "OutsideNad83", $"NAD83 is a North American system; the outline is at {middle}.", "If the coordinates are WGS 84, state that.");

    public static Finding NoGridPosition(string line) =>
        new(Error, "NoGridPosition", $"A position of '{line}' has no place on the grid. The line is left out.", "Check the coordinate system.");

    public static Finding TooWide(double degrees) => new(
        Error, "TooWide", Text($"A position lies {degrees:0} degrees of longitude from the middle of the outline's grid."),
        "Check for a stray position, or import distant parts on their own.");

    public static Finding AcrossZones(string zone) => new(
        Information, "AcrossZones", $"The outline crosses a border of UTM zones. All of it is laid on zone {zone}, that of its middle.");

    public static Finding AcrossDateLine => new(
        Information, "AcrossDateLine", "The longitudes jump across 180 degrees and are read as one outline across that meridian.");

    public static Finding ElevationsConverted(LinearUnit unit) =>
        new(Information, "ElevationsConverted", $"Elevations are read in {unit.Name()}.", "State their unit if it is another.");

    // Lengths
    public static Finding GroundLengths(CoordinateSystemInfo system) => new(
        Information, "GroundLengths",
        Text($"Lengths are ground lengths: those on {system.Name} divided by {system.CombinedFactor:0.0000000} (grid {system.PointScaleFactor:0.0000000}, height {system.SiteElevationMetres:0} m {system.ElevationFactor:0.0000000}). A 100 m fence is {100 * system.CombinedFactor:0.0000} m on the grid."));

    public static Finding GridLengths(CoordinateSystemInfo system) => new(
        Information, "GridLengths",
        Text($"Lengths are those on {system.Name}. A 100 m fence on the ground is {100 * system.CombinedFactor:0.0000} m here."),
        "Ask for ground lengths to lay out a fence.");

    public static Finding HeightAssumedZero => new(
        Information, "HeightAssumedZero", "Not every position has a height, so ground lengths are for height 0.",
        "State the site's height: 1000 m up a fence is 0.016 % longer.");

    public static Finding HeightImplausible(double metres) => new(
        Warning, "HeightImplausible", Text($"The site's height would be {metres:0} m, which no site has. Ground lengths are for height 0."),
        "State the unit of the elevations, or the site's height.");

    public static Finding WideSpread(double spread) => new(
        Warning, "WideSpread", Text($"The outline is so large that its ground lengths are off by up to {spread * 1000:0.000} m per 1000 m."),
        "Import distant parts on their own.");

    public static Finding VerySmall(double metres) => new(
        Warning, "VerySmall", Text($"The whole outline is {metres:0.######} m across."), "Check the coordinate system: degrees read as metres look like this.");

    public static Finding VeryLarge(double metres) => new(
        Warning, "VeryLarge", Text($"The whole outline is {metres / 1000:0} km across."), "Check for a stray position, and the coordinate system.");

    private static string Count(int count, string one, string many) => Text($"{count} {(count == 1 ? one : many)}");

    private static string Are(int count) => count == 1 ? "is" : "are";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
