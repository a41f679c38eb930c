using System.Globalization;
using Tautline.Formats.Import;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Sites.Reading;

/// <summary>What all readers of site files can say, in one place.</summary>
internal static class SiteFindings
{
    // Why a thing is passed over
    public const string NoPosition = "it has a coordinate that is no number";
    public const string NoLength = "it has no length";

    public static readonly Finding Empty = new(Error, "Empty", "The file is empty.", "Check that it was copied whole.");

    public static Finding TooLarge(long bytes, long most) => new(
        Error, "TooLarge", Text($"The file has {bytes:N0} bytes; at most {most:N0} are read."), "Cut the site out of it and read that.");

    public static Finding CannotBeRead(string message) => new(
        Error, "CannotBeRead", $"The file could not be read to its end: {message}", "Check the disk or fetch the file again.");

    public static Finding OtherFormat(string what, string hint) => new(Error, "OtherFormat", $"The file is {what}, which is not read.", hint);

    public static Finding NotXml(string what) => new(
        Error, "NotXml", $"The text is not XML here, or was cut off here{(what.Length > 0 ? $", inside {what}" : "")}.",
        "Fetch or export the file again. Nothing of a damaged file is used.");

    public static readonly Finding Dtd = new(
        Error, "NotXml", "The file has a document type declaration, which is not read for safety.", "Remove the DOCTYPE line, or export the file again.");

    public static readonly Finding UnknownXml = new(
        Error, "OtherFormat", "The file is XML, but none of LandXML, KML, GPX and OpenStreetMap.", "Export it in one of these.");

    public static Finding WrongRoot(string root, string want) => new(
        Error, "OtherFormat", $"The file is XML, but its first element is '{root}'.", $"It should be '{want}'.");

    public static Finding TooDeep(int most) => new(
        Error, "TooDeep", Text($"Things lie more than {most} deep in each other."), "Check what wrote the file.");

    public static Finding TooMany(SiteLimits limits) => new(
        Error, "TooMany", Text($"The file holds more than {limits.Features:N0} things or {limits.Vertices:N0} positions."), "Cut the site out of it and export that.");

    public static readonly Finding NothingFound = new(
        Error, "NothingFound", "The file holds no point and no line that is read.", "See what was skipped, and have the lines of the site exported.");

    public static Finding Skipped(List<SiteCount> skipped)
    {
        var shown = skipped.Take(12).Select(s => Text($"{s.Skipped:N0} {s.Kind} ({s.Why})"));
        var more = skipped.Count > 12 ? Text($" and {skipped.Count - 12} kinds more") : "";
        return new(Information, "Skipped", $"Passed over: {string.Join("; ", shown)}{more}.");
    }

    public static Finding RepeatsDropped(int count) => new(
        Information, "RepeatsDropped", Text($"{Count(count, "position", "positions")} at the same place as the one before {Are(count)} dropped."));

    public static Finding HeightsDropped(int count) => new(
        Warning, "HeightsDropped", Text($"{Count(count, "dropped position", "dropped positions")} had another height than the one before; the first height is kept."),
        "If a wall or a step was meant, give it two places.");

    public static readonly Finding FlatDrawing = new(Information, "FlatDrawing", "All heights in the file are 0, so it has none.");

    public static Finding ClosedByPlace(int count) => new(
        Information, "ClosedByPlace", Text($"{Count(count, "line ends", "lines end")} where {(count == 1 ? "it begins" : "they begin")} and {Are(count)} taken as closed."));

    public static Finding Flattened(double within, SiteUnit? unit) => new(
        Information, "Flattened", Text($"Curves that are no circles are put in chords within {within:0.######} {unit?.Name ?? "of the file's unit"}."));

    public static string Count(long count, string one, string many) => Text($"{count:N0} {(count == 1 ? one : many)}");

    public static string Are(int count) => count == 1 ? "is" : "are";

    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
