using Tautline.Formats.Import;
using static Tautline.Formats.Import.ProblemSeverity;
using static Tautline.Formats.Sites.Reading.SiteFindings;

namespace Tautline.Formats.Sites.Dxf;

/// <summary>Everything the DXF reader can say, in one place.</summary>
internal static class DxfFindings
{
    // Why a thing is passed over
    public const string PaperSpace = "drawn on a sheet of paper, not on the site";
    public const string Invisible = "drawn invisible";
    public const string Filling = "a filling, not a line";
    public const string Dimension = "a dimension or leader";
    public const string Face = "a face of a surface; surfaces are read from LandXML";
    public const string Mesh = "a mesh or solid";
    public const string Proxy = "made by an add-on whose data only it can read";
    public const string Outside = "its block is another drawing, which is not in this file";
    public const string NoBlock = "its block is not in the file";
    public const string InItself = "its block stands within itself, or blocks are nested too deep";
    public const string NoCurve = "its numbers make no curve";
    public const string Endless = "it has no end";
    public const string OtherKind = "no line, point or label";

    public static readonly Finding Binary = OtherFormat("a binary DXF drawing", "Save it as ASCII DXF.");

    public static readonly Finding Dwg = OtherFormat("a DWG drawing, whatever its name says", "Save it as DXF.");

    public static readonly Finding NotDxf = new(
        Error, "NotDxf", "The file has no section of a drawing: group code 0 with SECTION is nowhere.", "An ASCII DXF file is pairs of a number and a value, line by line.");

    public static Finding NotACode(string found) => new(
        Warning, "NotACode", $"Here should stand a group code, a whole number; it is '{found}'. The line is passed over.", "Save the drawing again.");

    public static Finding NotANumber(int code, string found) => new(
        Warning, "NotANumber", Text($"The value of group {code} should be a number; it is '{found}'."), "Save the drawing again.");

    public static readonly Finding LongLine = new(Warning, "LongLine", "The line is longer than half a million letters; the rest of it is dropped.", "Check what wrote the file.");

    public static Finding CutOff(string inside, int line) => new(
        Error, "CutOff", Text($"The file ends in the middle of a {inside} that begins in line {line}. Nothing of it is used."), "Fetch or save the file again.");

    public static Finding NoEnd(int last) => new(
        Warning, "NoEnd", Text($"The file does not end with EOF; it stops after line {last}. What was read is whole, but something may be missing after it."), "Save the drawing again.");

    public static Finding Version(string code, string name) => new(Information, "Version", $"The drawing says it is {code}{(name.Length > 0 ? $" ({name})" : "")}.");

    public static Finding NotTested(string code) => new(
        Warning, "VersionNotKnown", $"The drawing says it is '{code}', which is not between AC1009 (R12) and AC1032 (2018). It is read as far as it is alike.", "Save it as DXF 2018 or older.");

    public static Finding CodePage(string page) => new(
        Information, "CodePage", $"The drawing's code page '{page}' is not known; letters beyond the Latin alphabet may be wrong.", "Save it as DXF 2007 or newer.");

    public static Finding UnitNotKnown(string number) => new(
        Information, "UnitNotKnown", $"The drawing's $INSUNITS is {number}, a unit that no site is drawn in.", "State the unit.");

    public static readonly Finding GeoData = new(
        Information, "GeoData", "The drawing has a place on the earth stored (GEODATA), which is not read.", "State the coordinate system if the drawing is on a map grid.");

    public static Finding VertexCount(double stated, int found) => new(
        Warning, "VertexCount", Text($"A polyline says it has {stated:0} vertices and has {found}."), "Compare its shape with the drawing.");

    public static readonly Finding NoSeqEnd = new(Information, "NoSeqEnd", "A polyline has no SEQEND behind its vertices; it ends with the last of them.");

    public static readonly Finding FitPoints = new(
        Warning, "FitPoints", "A spline has points it goes through and no control points. It is drawn straight from point to point.", "Compare its shape with the drawing.");

    public static Finding Budget(int most) => new(
        Error, "TooMany", Text($"The blocks of the drawing unfold to more than {most:N0} things."), "Explode less, or delete what is not of the site.");

    public static Finding Hidden(int layers, int things) => new(
        Information, "HiddenLayers", Text($"{Count(things, "thing lies", "things lie")} on {Count(layers, "layer", "layers")} switched off or frozen; they are read, and proposed for nothing."));

    public static Finding Bent(int count) => new(
        Information, "BentArcs", Text($"{Count(count, "arc is", "arcs are")} drawn in a slanted plane or with two scales: no {(count == 1 ? "circle" : "circles")} in plan, so put in chords."));
}
