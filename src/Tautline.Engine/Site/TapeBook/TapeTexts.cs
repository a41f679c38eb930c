using Tautline.Engine.Problems;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>One kind of problem: its code and its words, with places for figures.</summary>
internal sealed record TapeText(Severity Severity, string Code, string Message, string Hint);

/// <summary>The words of every problem of a tape book, in one place: what was found, and what would be right.</summary>
internal static class TapeTexts
{
    // the text as a whole
    public static readonly TapeText BookTooLarge = Error("book-too-large", "The text has {0} characters; a tape book has at most {1}.", "Check that this is a tape book.");
    public static readonly TapeText BookEmpty = Error("book-empty", "The book says nothing.", "The least there is: a spec with its height, and a leg. For example: spec yard height 6'");
    public static readonly TapeText BookNoLeg = Error("book-no-leg", "The book walks no leg.", "Write what was walked: leg 100'");
    public static readonly TapeText TooManyProblems = Error("too-many-problems", "More than {0} problems; the rest is not told.", "Put these right first.");

    // characters and words
    public static readonly TapeText ControlCharacter = Error("control-character", "A character that cannot be seen stands here (code {0}).", "Take it out; the rest of the line was not read.");
    public static readonly TapeText QuoteUnclosed = Error("quote-unclosed", "A quote is opened here and not closed.", "Close it with a second \". An inch mark stands right behind its figure, without a space: 6\"");
    public static readonly TapeText WordUnknown = Error("word-unknown", "'{0}' is not a statement.", "{1}");
    public static readonly TapeText ClauseUnknown = Error("clause-unknown", "'{0}' does not belong in a '{1}' statement.", "{2}");
    public static readonly TapeText TextAfter = Error("text-after", "'{0}' stands after the end of the statement.", "One statement a line. A remark starts with #");
    public static readonly TapeText WordMissing = Error("word-missing", "{0} is missing here.", "It is written: {1}");
    public static readonly TapeText WordExpected = Error("word-expected", "'{0}' stands where {1} belongs.", "It is written: {2}");
    public static readonly TapeText ClauseTwice = Error("clause-twice", "'{0}' is said twice.", "Say it once.");
    public static readonly TapeText StatementTwice = Error("statement-twice", "'{0}' was said already, in line {1}.", "A book says it once.");

    // quantities
    public static readonly TapeText LengthMissing = Error("length-missing", "A length is missing here.", "Write it with its unit: 132' 6 1/2\" or 40.4 m");
    public static readonly TapeText LengthExpected = Error("length-expected", "'{0}' stands where a length belongs.", "Write it with its unit: 132' 6 1/2\" or 40.4 m");
    public static readonly TapeText UnitMissing = Error("unit-missing", "'{0}' has no unit.", "Write {0}' for feet, {0}\" for inches or {0} m for metres.");
    public static readonly TapeText UnitUnknown = Error("unit-unknown", "'{0}' is not a unit.", "Known are ft or ', in or \", m, cm and mm.");
    public static readonly TapeText LengthNegative = Error("length-negative", "A length of {0} is below zero.", "Lengths are zero or more. The way is told by a turn or a bearing.");
    public static readonly TapeText LengthBad = Error("length-bad", "{0}", "{1}");
    public static readonly TapeText LengthHuge = Error("length-huge", "A length of {0} is out of reason.", "Lengths are up to 1,000,000 m. Check the unit.");
    public static readonly TapeText WeightBad = Error("weight-bad", "'{0}' is no weight.", "Write it above zero with its unit: leaf 850 lb or leaf 385 kg");
    public static readonly TapeText SlopeMissing = Error("slope-missing", "A slope is missing here.", "Write up 12%, down 1:8 or up 7 deg.");
    public static readonly TapeText SlopeUnit = Error("slope-unit", "The slope '{0}' has no unit.", "Write {0}% for per cent, {0} deg for degrees, or 1:{0} for rise to run.");
    public static readonly TapeText SlopeBad = Error("slope-bad", "{0}", "{1}");
    public static readonly TapeText SlopeNegative = Error("slope-negative", "The slope '{0}' has a sign.", "Say up or down, and the slope without a sign.");
    public static readonly TapeText SlopeSteep = Error("slope-steep", "A slope of {0} % cannot be fenced.", "Slopes are at most 100 %, that is 1:1 or 45 deg.");
    public static readonly TapeText BearingMissing = Error("bearing-missing", "A bearing is missing here.", "Write N 37 E, N 37°30' E, due E or az 127.");
    public static readonly TapeText BearingBad = Error("bearing-bad", "{0}", "{1}");
    public static readonly TapeText TurnBad = Error("turn-bad", "{0}", "{1}");
    public static readonly TapeText AngleMissing = Error("angle-missing", "The turn of the arc is missing here.", "Write it in degrees: arc right radius 40' turn 90°");
    public static readonly TapeText TurnRange = Error("turn-range", "A turn of {0} degrees is no corner.", "A turn is more than 0 and less than 180 degrees to the right (R) or left (L).");

    // specs, calibrations, rules
    public static readonly TapeText SpecHeightMissing = Error("spec-height-missing", "The spec '{0}' does not exist yet and states no height.", "A new spec is written: spec {0} height 6'");
    public static readonly TapeText LacedRange = Error("laced-range", "A fabric of {0} widths laced together is not made.", "One to four equal widths make the height: laced 2");
    public static readonly TapeText SpecTwice = Error("spec-twice", "The spec '{0}' stands in line {1} already.", "Give this one another name. 'spec {0}' on its own uses the first from the next leg on.");
    public static readonly TapeText SpecUnknown = Error("spec-unknown", "The spec '{0}' does not exist up to here.", "Known are: {1}. A spec stands above its use.");
    public static readonly TapeText SpecNoLine = Error("spec-no-line", "The spec '{0}' is chosen before any line.", "It is chosen below its line and holds from the next leg on.");
    public static readonly TapeText SpecMissing = Error("spec-missing", "The line '{0}' is walked and the book has no spec above it.", "Say what the fence is, above the line: spec yard height 6'");
    public static readonly TapeText SpecOpen = Error("spec-open", "The book has {0} specs and the line '{1}' does not say which.", "Write 'spec NAME' between the line and its first leg. Known are: {2}.");
    public static readonly TapeText HeightNoSpec = Error("height-no-spec", "A height is stated and the book has no spec to take the rest from.", "Write a spec first: spec yard height 6'");
    public static readonly TapeText HeightNoLine = Error("height-no-line", "A height on its own stands before any line.", "It holds from the next leg of a line on. The height of a spec is written: spec yard height 6'");
    public static readonly TapeText CalibrationWhich = Error("calibration-which", "The book has {0} specs and the ten pickets do not say of which.", "Write: ten pickets 14\" of NAME");
    public static readonly TapeText CalibrationTwice = Error("calibration-twice", "Ten pickets of '{0}' stand in line {1} already.", "Keep the better measurement.");
    public static readonly TapeText RuleUnknown = Error("rule-unknown", "The rule '{0}' is not known.", "{1}");
    public static readonly TapeText RuleValue = Error("rule-value", "'{0}' is no value of the rule '{1}'.", "It is written: {2}");

    // walking
    public static readonly TapeText LineTwice = Error("line-twice", "The line '{0}' stands in line {1} of the book already.", "Give this one another name.");
    public static readonly TapeText LineEmpty = Error("line-empty", "The line '{0}' walks no leg.", "Write what was walked: leg 100'");
    public static readonly TapeText LineClosed = Error("line-closed", "The line '{0}' was closed in line {1}.", "Start a new line: line NAME");
    public static readonly TapeText StartLate = Error("start-late", "'{0}' stands after the first leg of the line '{1}'.", "It belongs between the line and its first leg.");
    public static readonly TapeText TurnNoLeg = Error("turn-no-leg", "A turn stands before any leg of the line.", "A turn is made at the end of a leg. The first way is told by: facing N 37 E");
    public static readonly TapeText TurnTwice = Error("turn-twice", "Two turns stand in a row; the first is in line {0}.", "A leg stands between two turns. One corner has one turn.");
    public static readonly TapeText TurnAndBearing = Error("turn-and-bearing", "The leg states its own way and a turn stands before it, in line {0}.", "Keep one of the two.");
    public static readonly TapeText TurnUnused = Warning("turn-unused", "No leg follows this turn.", "Is a leg missing? If not, take the turn out.");
    public static readonly TapeText LegShort = Error("leg-short", "The leg is {0} long.", "A leg is at least {1}.");
    public static readonly TapeText ArcRadius = Error("arc-radius", "An arc of no radius cannot be.", "State the radius of the fence line: arc right radius 40' length 62'");
    public static readonly TapeText ArcHalf = Error("arc-half-circle", "The arc turns {0} degrees: half a circle and more is no one leg.", "Walk it as two arcs. Of this radius one leg is less than {1} long.");
    public static readonly TapeText ArcTight = Error("arc-tight", "The ends of the arc are {0} apart, and its radius is {1}.", "The radius is more than half of that, {2}. Check the radius, or the legs before it.");
    public static readonly TapeText MeasureMissing = Error("measure-missing", "The leg slopes, and the book does not say how sloping legs were measured.", "Write above it 'measured along' if the tape lay on the ground, 'measured level' if it was held level.");
    public static readonly TapeText GateNoLeg = Error("gate-no-leg", "A gate stands before any leg of the line.", "A gate stands below its leg and is measured from the start of that leg.");
    public static readonly TapeText GateOffLeg = Error("gate-off-leg", "The gate reaches from {0} to {1} and its leg is {2} long.", "A gate is measured from the start of the leg above it and lies within that leg.");
    public static readonly TapeText GateZero = Error("gate-zero", "A gate of no width cannot be.", "State the clear opening: gate walk 4' from 20'");
    public static readonly TapeText NoDigNoLeg = Error("no-dig-no-leg", "A no-dig stretch stands before any leg of the line.", "It stands below its leg and is measured from the start of that leg.");
    public static readonly TapeText NoDigRange = Error("no-dig-range", "The no-dig stretch runs from {0} to {1} and its leg is {2} long.", "The second figure is larger than the first, and both lie on the leg above.");

    public static readonly TapeText MarkNoLeg = Error("mark-no-leg", "A '{0}' stands before any leg of the line.", "It stands below its leg and is measured from the start of that leg.");
    public static readonly TapeText MarkRange = Error("mark-range", "The '{3}' runs from {0} to {1} and its leg is {2} long.", "The second figure is larger than the first, and both lie on the leg above.");
    public static readonly TapeText ShotOffLeg = Error("shot-off-leg", "The shot lies at {0} and its leg is {1} long.", "A shot is measured from the start of the leg above it and lies on that leg.");

    public static readonly TapeText PinOffLeg = Error("pin-off-leg", "The pin stands at {0} and its leg is {1} long.", "A pin is measured from the start of the leg above it and stands on that leg.");
    public static readonly TapeText ClearingZero = Error("clearing-zero", "A clearing of no width cannot be.", "State the width cleared: clearing 0' to 60' width 4'");
    public static readonly TapeText TemporaryZero = Error("temporary-zero", "A temporary fence, or a panel of it, of no length cannot be.", "Write: temporary 300' panel 12'");
    public static readonly TapeText LineSaidTwice = Error("line-said-twice", "'{0}' was said of this line already, in line {1}.", "A line says it once.");
    public static readonly TapeText TieClosed = Error("tie-closed", "The line '{0}' is closed and has no end to tie in.", "Take '{1}' out, or leave the line open.");

    // closing
    public static readonly TapeText CloseFewLegs = Error("close-few-legs", "The line is closed after {0} legs.", "Two legs, not back on themselves, are the fewest that 'close' can make a yard of.");
    public static readonly TapeText ClosedOnto = Note("close-misclosure", "The legs end {0} {1} of the start after {2} walked, 1:{3}. The last leg is led to the start.", "If a closing leg was meant, write: close within 0\"");
    public static readonly TapeText ClosedByLeg = Note("close-leg", "The closing leg is {0}: the legs end {1} of the start after {2} walked, 1:{3}.", "If all legs were walked, one of them is wrong by that much.");
    public static readonly TapeText ClosedShort = Warning("close-short-leg", "The closing leg is only {0}: the legs end {1} of the start after {2} walked, 1:{3}.", "If all legs were walked, check them, or lead the last one to the start with: close within {0}");
    public static readonly TapeText ClosedBad = Error("close-gap", "The legs end {0} {1} of the start after {2} walked, 1:{3}: too much for a slip of the tape, too little for a leg.", "Check the legs, or lead the last one to the start with: close within {0}");
    public static readonly TapeText CloseTurn = Warning("close-turn", "The turn before 'close' points more than 5 degrees away from the {0}.", "Check the turns and the lengths; the plan goes straight back to the start.");

    public static readonly TapeText AdjustOpen = Error("adjust-open", "'adjust' stands before its line is closed.", "It belongs below the 'close' of the line.");
    public static readonly TapeText AdjustTwice = Error("adjust-twice", "The line '{0}' was adjusted in line {1}.", "Once spread, nothing is left to spread.");
    public static readonly TapeText AdjustLeg = Error("adjust-leg", "The last leg of the line '{0}' was made by 'close': nothing is left to spread.", "Take 'adjust' out. If all legs were walked, state how far off they may end: close within 3'");
    public static readonly TapeText Adjusted = Note("adjust-moved", "The misclosure of {0} is spread over {1} legs, to each by its length. Corners moved: {2}.", "Without 'adjust' the last leg takes it all.");

    // writing
    public static readonly TapeText NotWritten = Warning("not-written", "A tape book cannot say: {0}.", "Keep the job file; this book alone does not hold it.");
    public static readonly TapeText NameChanged = Warning("name-changed", "{0}", "The book calls it {1}.");
    public static readonly TapeText WrittenWrong = Error("written-not-readable", "This book cannot be read back: {0}", "Keep the job file. {1}");

    private static TapeText Note(string code, string message, string hint) => new(Severity.Note, code, message, hint);
    private static TapeText Warning(string code, string message, string hint) => new(Severity.Warning, code, message, hint);
    private static TapeText Error(string code, string message, string hint) => new(Severity.Error, code, message, hint);
}
