using System.Globalization;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Ground;

/// <summary>What all readers of ground files can say, in one place.</summary>
internal static class GroundFindings
{
    private const string StateSystem = "State the system (an EPSG number, or the site's own metres or feet).";

    // The file as a whole
    public static readonly Finding Empty = new(Error, "Empty", "The file is empty.", "Check that it was copied whole.");

    public static Finding TooLarge(long bytes, long most) => new(
        Error, "TooLarge", Text($"The file has {bytes:N0} bytes; at most {most:N0} are read."), "Cut the site out of it and read that.");

    public static Finding OtherFormat(string what, string hint) => new(
        Error, "OtherFormat",
        $"The file is {what}, which is not read as ground.",
        hint);

    public static Finding CannotBeRead(string message) =>
        new(Error, "CannotBeRead", $"The file could not be read to its end: {message}", "Check the disk or fetch the file again.");

    // The system of the plan coordinates
    public static Finding SystemClaimed(string system, string where) => new(
        Information, "SystemClaimed",
        $"The file says its plan coordinates are {system}. Read so, the ground {where}.",
        "Check on a map that the site is there.");

    public static Finding ClaimContradicts(string claim, string stated) => new(
        Warning, "ClaimContradicts",
        $"The file says its plan coordinates are {claim}; {stated} was stated and is used.",
        "Check on a map that the ground lies where the site is.");

    public static Finding UnitContradicts(string claim, string stated, string used) => new(
        Warning, "UnitContradicts",
        $"The file says its plan coordinates are in {claim}; {stated} was stated, so they are read in {used}.",
        "Check a known distance.");

    public static Finding UnitAgainstCode(int code, ProjectedSystem grid, LinearUnit unit) => new(
        Warning, "UnitAgainstCode",
        Text($"The file names EPSG:{code} ({grid.Name}), which is in {grid.Unit.Name()}, and says beside it that its unit is {unit.Name()}."),
        StateSystem);

    public static Finding ClaimOutside(string system, string where, string twin) => new(
        Warning, "ClaimOutside",
        $"The file says its plan coordinates are {system}. Read so, the ground {where}. {twin}".TrimEnd(),
        StateSystem);

    public static Finding ClaimNotKnown(int code, string? text) => new(
        Warning, "ClaimNotKnown",
        Text($"The file says its plan coordinates are EPSG:{code}{(text is null ? "" : $" ({text})")}, which is not among the systems this program knows."),
        StateSystem);

    public static Finding OutsideArea(string system, string where, string twin) => new(
        Error, "OutsideArea", $"Read as {system} the ground {where}. {twin}".TrimEnd(), "Check the system and its unit.");

    public static Finding UnknownSystem(int code) => new(
        Error, "UnknownSystem",
        Text($"EPSG:{code} is not among the systems this program knows."),
        "Have the ground saved in UTM or a listed state grid.");

    public static Finding RefusedSystem(RefusedSystem system) => new(
        Error, "RefusedSystem",
        Text($"EPSG:{system.EpsgCode}, {system.Name}, is not used for lengths: {system.Reason}."),
        "Have the ground saved in UTM or a listed state grid.");

    public static Finding Degrees(string? text) => new(
        Error, "Degrees", $"The plan coordinates are longitude and latitude{(text is null ? "" : $" ({text})")}. Degrees are not lengths, and ground in degrees is not read.",
        "Have it projected to UTM or a state grid, or, if the numbers are lengths, state the system.");

    public static Finding DegreesOverruled(string unit) => new(
        Warning, "DegreesOverruled",
        $"The plan coordinates look like longitude and latitude; it was stated that they are {unit}.",
        "Check the size of the ground.");

    // The heights
    public static Finding HeightUnitClaimed(string unit) => new(
        Information, "HeightUnitClaimed",
        $"The file says its heights are in {unit}.",
        "State their unit if it is another.");

    public static Finding HeightUnitContradicts(string claim, string stated) => new(
        Warning, "HeightUnitContradicts",
        $"The file says its heights are in {claim}; {stated} were stated and are used.",
        "Check a known height.");

    public static string HeightUnitQuestion(double lowest, double highest) =>
        "The file does not say in what unit its heights are." + (double.IsNaN(lowest) ? "" : Text($" They run from {lowest:0.###} to {highest:0.###}."));

    public static string UnitChoice(LinearUnit unit, double? steep) =>
        steep is { } share ? Text($"{unit.Name()}: {Share(share)} of the ground would be steeper than 100 %") : unit.Name();

    public static Finding HeightsImplausible(double lowest, double highest) => new(
        Warning, "HeightsImplausible",
        Text($"The heights run from {lowest:0} to {highest:0} m, which no site has."),
        "Check their unit, and the mark of places without ground.");

    public static Finding Steepness(double middle, double share) => new(
        Information, "Steepness",
        Text($"Half of the ground is steeper than {100 * middle:0} %, and {Share(share)} of it steeper than 100 %."),
        "If that is not the site, check the unit of the heights.");

    public static Finding TooSteep(double share, LinearUnit plan, LinearUnit heights, double? asFeet) => new(
        Warning, "TooSteep",
        Text($"{Share(share)} of the ground is steeper than 100 % with plan in {plan.Name()} and heights in {heights.Name()}.{(asFeet is { } other ? $" Were the heights feet, it would be {Share(other)}." : "")}"),
        "Check the unit of the heights: feet read as metres look like this.");

    public static string Share(double share) => share switch
    {
        0 => "none",
        < 0.01 => "less than 1 %",
        _ => Text($"{100 * share:0} %"),
    };

    public static string Count(long count, string one, string many) => Text($"{count:N0} {(count == 1 ? one : many)}");

    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
