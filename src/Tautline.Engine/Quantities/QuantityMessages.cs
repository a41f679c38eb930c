namespace Tautline.Engine.Quantities;

/// <summary>
/// Every text a person may see when a written quantity cannot be read: what was found, and what would be right.
/// </summary>
internal static class QuantityMessages
{
    private const string KnownUnits = "Known units: ' or ft, \" or in, m, cm, mm, ftUS (survey foot).";

    // Any quantity

    public static ParseProblem Empty(string example) =>
        new("empty", 0, "Nothing is written here.", $"Write it like {example}.");

    public static ParseProblem NumberExpected(TextToken found, string example) => new(
        "number-expected", found.Position, $"A number was expected, but {Found(found)}.", $"Write it like {example}.");

    public static ParseProblem Leftover(int position, string rest, string example) => new(
        "leftover", position, $"\"{rest}\" is left over and has no meaning here.", $"Take it out, or write it like {example}.");

    public static ParseProblem Comma(int position) => new(
        "comma", position, "The comma could be a decimal point or a thousands mark.",
        "Write a point before decimals, and nothing between thousands: 1234.5.");

    public static ParseProblem TooManyDigits(int position) => new(
        "too-many-digits", position, $"A number with more than {Exact.Whole(Tokenizer.MostDigits)} digits cannot be kept exactly.",
        "Write fewer decimals.");

    public static ParseProblem ZeroDenominator(int position, string written) => new(
        "zero-denominator", position, $"{written} divides by zero.", "Write a number above zero after the dividing mark.");

    public static ParseProblem FractionParts(int position, string written) => new(
        "fraction-parts", position, $"The fraction {written} has a decimal point in it.", "Write whole numbers above and below the line, such as 3/8.");

    public static ParseProblem MixedFraction(int position, string written) => new(
        "mixed-fraction", position, $"{written} does not add up: a fraction follows only a whole number, and is below 1.",
        "Write it like 6 1/2 or 6.5.");

    // Lengths

    public static ParseProblem UnitMissing(int position, string written) => new(
        "unit-missing", position, $"{written} has no unit.", $"Write {written}' for feet, {written}\" for inches or {written} m for metres.");

    public static ParseProblem UnknownUnit(TextToken word) => new(
        "unknown-unit", word.Position, $"\"{word.Text}\" is not a unit of length known here.", KnownUnits);

    public static ParseProblem DashBeforeFraction(int position, string written) => new(
        "dash-before-fraction", position, $"{written} could be feet and inches, or inches with a fraction.",
        "Write 6 1/2\" for inches with a fraction, or 6' 0 1/2\" for feet and inches.");

    public static ParseProblem InchesAfterDecimalFeet(int position) => new(
        "inches-after-decimal-feet", position, "Inches follow feet that already hold a fraction.",
        "Write whole feet and inches, such as 132' 6\", or decimal feet alone, such as 132.5'.");

    public static ParseProblem TooManyInches(int position, decimal feet, decimal inches)
    {
        var carried = decimal.Floor(inches / 12);
        return new(
            "too-many-inches", position, $"{Plain(inches)} inches after feet make another foot: they must be below 12.",
            $"Write {Plain(feet + carried)}' {Plain(inches - 12 * carried)}\" if {Plain(feet)} feet plus {Plain(inches)} inches is meant.");
    }

    public static ParseProblem InchesExpected(TextToken found) => new(
        "inches-expected", found.Position, $"After feet only inches can follow, but {Found(found)}.", "Write it like 132' 6 1/2\".");

    public static ParseProblem TooLong() => new(
        "too-long", 0, "This is longer than half way round the earth.", "Check the number and its unit: the limit is 20000 km.");

    // Stations

    public static ParseProblem PlusMissing(int position, string written, string example) => new(
        "plus-missing", position, $"{written} is not a station: the plus is missing.", $"Write it like {example}.");

    public static ParseProblem StationWhole(TextToken full) => new(
        "station-whole", full.Position, $"{full.Text} before the plus is not a whole number.", "Put decimals at the end only, such as 4+32.5.");

    public static ParseProblem PlusDigits(TextToken plus, int digits, string example) => new(
        "plus-digits", plus.Position, $"{plus.Text} after the plus does not have {Exact.Whole(digits)} digits before the point.",
        $"Fill up with zeros, and write it like {example}.");

    public static ParseProblem OtherStation(TextToken plus, string name, string otherName, string example) => new(
        "other-station", plus.Position, $"{plus.Text} after the plus is {otherName} style, but this job is in {name} units.",
        $"Write it like {example}.");

    // Slopes

    public static ParseProblem SteepRatio(TextToken rise, TextToken run) => new(
        "steep-ratio", rise.Position, $"{rise.Text}:{run.Text} is written both ways: rise to run, and run to rise.",
        $"Write {run.Text}:{rise.Text} for a rise of {run.Text} in a run of {rise.Text}, or a percentage for anything steeper than 1:1.");

    public static ParseProblem SlopeUnitMissing(int position, string written) => new(
        "slope-unit-missing", position, $"\"{written}\" does not say how the slope is measured.",
        "Write it like 12%, 1:8 (rise to run), 7 deg or 1 1/2\"/ft.");

    public static ParseProblem PerFootMissing(TextToken found, string written) => new(
        "per-foot-missing", found.Position, $"\"{written}\" does not say over what length the inches rise.", "Write inches per foot, such as 1 1/2\"/ft.");

    public static ParseProblem PlumbSlope(int position, string written) => new(
        "plumb-slope", position, $"A slope of {written} is plumb or beyond.", "A slope is below 90 degrees.");

    // Angles

    public static ParseProblem SixtyOrMore(TextToken part, string name) => new(
        "sixty-or-more", part.Position, $"{part.Text} {name} are too many.", $"There are 60 {name} to the next larger unit: write 0 to under 60.");

    public static ParseProblem DecimalBeforePart(TextToken larger, string name) => new(
        "decimal-before-part", larger.Position, $"{larger.Text} already holds a fraction; {name} cannot follow.",
        "Put decimals in the last part only.");

    public static ParseProblem BearingStart(TextToken found) => new(
        "bearing-start", found.Position, $"A bearing begins with N or S, but {Found(found)}.", $"Write it like {BearingText.Example}.");

    public static ParseProblem BearingEnd(TextToken found) => new(
        "bearing-end", found.Position, $"A bearing ends with E or W, but {Found(found)}.", $"Write it like {BearingText.Example}.");

    public static ParseProblem CardinalExpected(TextToken found) => new(
        "cardinal-expected", found.Position, $"After \"due\" comes N, E, S or W, but {Found(found)}.", "Write it like due N.");

    public static ParseProblem PastQuadrant(int position, string written) => new(
        "past-quadrant", position, $"{written} is more than a quadrant.", "The angle of a bearing is 0 to 90 degrees; write az before an azimuth.");

    public static ParseProblem BareBearing(int position, string written) => new(
        "bare-bearing", position, $"{written} alone does not say whether it is an azimuth.",
        $"Write az {written} for an azimuth, or a bearing such as N 45°30' E.");

    public static ParseProblem FullCircle(int position, string written) => new(
        "full-circle", position, $"An azimuth of {written} is a full circle or more.", "An azimuth is 0 to under 360 degrees, clockwise from north.");

    public static ParseProblem FullTurn(int position, string written) => new(
        "full-turn", position, $"A turn of {written} is a full circle or more.", "A turn is below 360 degrees.");

    public static ParseProblem TurnSideMissing(TextToken found) => new(
        "turn-side-missing", found.Position, $"A turn begins with R or L, but {Found(found)}.", $"Write it like {AngleText.Example}.");

    private static string Found(TextToken token) => token.Kind == TokenKind.End ? "the text ends" : $"\"{token.Text}\" was found";

    private static string Plain(decimal value) => value.ToString("0.###############", System.Globalization.CultureInfo.InvariantCulture);
}
