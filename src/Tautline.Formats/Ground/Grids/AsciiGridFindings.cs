using Tautline.Formats.Import;
using static Tautline.Formats.Ground.GroundFindings;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Ground.Grids;

/// <summary>Everything the reader of ASCII grids can say beside that.</summary>
internal static class AsciiGridFindings
{
    public static readonly Finding Utf16 = new(Error, "NotText", "The text is UTF-16.", "Save it as plain text (ASCII or UTF-8).");

    public static Finding Missing(string keys) => new(
        Error, "HeaderMissing",
        $"The header has no {keys}.",
        "It should give ncols, nrows, xllcorner or xllcenter, yllcorner or yllcenter, and cellsize (or dx and dy).");

    public static Finding BadHeader(string key, string text, string want) => new(
        Error, "BadHeader",
        $"The header's {key} is '{text}', not {want}.",
        "Mend the header.");

    public static Finding KeyTwice(string key) => new(
        Error, "BadHeader",
        $"The header gives {key} a second time, or both a corner and a centre.",
        "Leave one of them.");

    public static Finding KeyNotKnown(string key, string value) => new(
        Warning, "KeyNotKnown",
        $"The header's '{key} {value}' is not known and passed over.");

    public static Finding NoDataTaken(long count) => new(
        Information, "NoDataTaken",
        Text($"The header states no mark of cells without ground; {Count(count, "height of -9999 was", "heights of -9999 were")} taken for it, as is custom."));

    public static Finding NotANumber(string text) => new(
        Error, "NotANumber",
        $"'{text}' is no number.",
        "Mend it; a cell without ground gets the mark of the header.");

    public static Finding TooFewValues(long found, long want) => new(
        Error, "ValueCount",
        Text($"The file ends here after {found:N0} of {want:N0} heights: {want - found:N0} are missing."),
        "Fetch the file again, or mend ncols and nrows.");

    public static Finding NoRoom(long want, long room) => new(
        Error, "ValueCount",
        Text($"The header says {want:N0} heights; a file of this size has room for {room:N0} at most."),
        "Fetch the file again, or mend ncols and nrows.");

    public static Finding TooManyValues(long found, long want) => new(
        Error, "ValueCount",
        Text($"From here on there are more heights than the {want:N0} of the header: {found:N0} in all."),
        "Mend ncols and nrows.");

    public static readonly Finding DecimalCommas = new(
        Information, "DecimalCommas",
        "Numbers are written with decimal commas and were read so.");

    public static readonly Finding MixedDecimals = new(
        Warning, "MixedDecimals",
        "Some numbers have a decimal comma and others a point. Both were read as decimal marks.",
        "Check that no comma separates thousands.");
}
