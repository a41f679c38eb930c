using Tautline.Formats.Import;
using static Tautline.Formats.Import.ProblemSeverity;
using static Tautline.Formats.Sites.Reading.SiteFindings;

namespace Tautline.Formats.Sites.Shape;

/// <summary>Everything the shapefile reader can say, in one place.</summary>
internal static class ShapeFindings
{
    public static readonly Finding NotShape = new(Error, "NotShapefile", "The file does not begin as a shapefile's .shp does.", "Name the file that ends in .shp; its .dbf and .prj are found beside it.");

    public static readonly Finding NoPrj = new(Information, "NoPrj", "No .prj is beside the file, so it says nothing of its coordinate system.", "Ask for it, or state the system.");

    public static readonly Finding NoDbf = new(Information, "NoDbf", "No .dbf is beside the file, so its shapes have no names.", "Ask for it if names matter.");

    public static readonly Finding DbfNotRead = new(Warning, "DbfNotRead", "The .dbf beside the file is no dBASE table or is cut off. The shapes are read without it.", "Have all files of the set sent again.");

    public static readonly Finding PrjNotRead = new(Warning, "PrjNotRead", "The .prj beside the file defines no projected, geographic or local system that can be read.", "State the coordinate system.");

    public static Finding CodePage(string page) => new(Information, "CodePage", $"The .cpg names the code page '{page}', which is not known.", "Some letters of names may be wrong.");

    public static Finding RecordTooLong(int number, long length) => new(Error, "BadRecord", Text($"Record {number} says it has {length:N0} bytes."), "Have the file sent again. Nothing of it is used.");

    public static Finding CutOff(int number) => new(Error, "CutOff", Text($"The file ends in the middle of record {number}."), "Have the file sent again. Nothing of a cut-off file is used.");

    public static Finding LengthDiffers(long stated, long found) => new(
        Warning, "LengthDiffers", Text($"The head of the file says it has {stated:N0} bytes; it has {found:N0}. All of them are read."), "Check that nothing is missing.");

    public static Finding MeasuresNotCounted(int count) => new(
        Warning, "MeasuresNotCounted", Text($"{Count(count, "record is", "records are")} longer than the file says: measures follow that its lengths leave out. They are passed over."),
        "Look at the shapes; the program that wrote the file has a fault.");

    public static Finding RowsDiffer(long rows, int shapes) => new(
        Warning, "RowsDiffer", Text($"The .dbf has {rows:N0} rows for {shapes:N0} shapes."), "Names may stand at the wrong shapes: have all files of the set sent again.");

    public static readonly Finding BadRecord = new(Warning, "BadRecord", "A record's counts do not fit its length. It is left out.", "Have the file sent again.");

    public static Finding HeightsNotNumbers(int count) => new(
        Information, "HeightsNotNumbers", Text($"{Count(count, "height is", "heights are")} no number and {(count == 1 ? "is" : "are")} taken as none."));
}
