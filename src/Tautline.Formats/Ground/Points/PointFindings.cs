using Tautline.Formats.Import;
using static Tautline.Formats.Ground.GroundFindings;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Ground.Points;

/// <summary>Everything the reader of survey points can say, in one place.</summary>
internal static class PointFindings
{
    public static readonly Finding NotText = new(
        Error, "NotText",
        "The file holds zero bytes, so it is no text of survey points.",
        "Save the points as text (CSV), or state the format.");

    public static readonly Finding NotUtf8 = new(
        Information, "NotUtf8",
        "The text is not UTF-8. It was read byte for byte; letters beyond English may look wrong, numbers do not.",
        "Save it as UTF-8 to mend the letters.");

    public static readonly Finding NoPoints = new(
        Error, "NoPoints", "No line looks like a point: two or more numbers beside each other, split by comma, semicolon, tab or blanks.",
        "A line should be like 12,5000.00,1000.00,98.40,EP. Raw angles and distances are not read: have coordinates computed first.");

    public static Finding NoRows(ColumnOrder order) => new(
        Error, "NoPoints", $"With the columns {order.Text} no line is a point.", "Check the order of the columns.");

    public static Finding CommasCollide(string row) => new(
        Error, "CommasCollide", $"The comma is both between the columns and inside the numbers: {Cut(row)}. Which numbers belong together cannot be told.",
        "Save it with decimal points, or with semicolons or tabs between the columns. If all numbers are whole, state the comma as the separator.");

    public static Finding HeaderContradicts(ColumnOrder header, ColumnOrder stated) => new(
        Warning, "HeaderContradicts",
        $"The header names the columns {header.Text}; {stated.Text} was stated and is used.",
        "Check which coordinate is north.");

    public static Finding HeaderTaken(ColumnOrder order) => new(
        Information, "HeaderTaken",
        $"The columns are as this header names them: {order.Text}.");

    // Rows
    public static Finding Skipped(int blank, int comments, int headings, string first) => new(
        Information, "LinesSkipped",
        Text($"{Count(blank + comments + headings, "line is", "lines are")} no point and passed over: {blank} blank, {Count(comments, "comment", "comments")}, {Count(headings, "heading or rule", "headings or rules")}{first}."));

    public static Finding ShortRow(int fields, string column) => new(
        Warning, "RowLeftOut",
        Text($"The line looks like a point but ends after {Count(fields, "column", "columns")}: it has no {column}. It is left out."),
        "Mend it, or check the order of the columns.");

    public static Finding NotANumber(string column, string text) => new(
        Warning, "RowLeftOut",
        $"The line looks like a point but its {column} '{Cut(text)}' is no number. It is left out.",
        "Mend it, or check the order of the columns.");

    public static Finding LastLineOpen => new(
        Information, "LastLineOpen",
        "The last line has fewer columns than the one before and no line end: a file that was cut off looks so.",
        "Check that the file is whole.");

    public static Finding RulesCut(int count) => new(
        Information, "RulesCut",
        Text($"A rule of dashes behind the code was left away on {Count(count, "line", "lines")}."));

    // Positions
    public static Finding PlaceHolders(int rows, string place, string lines, bool kept) => new(
        kept ? Information : Warning, "PlaceHolders",
        Text($"{Count(rows, "row stands", "rows stand")} at one place, {place} (lines {lines}). {(kept ? "They are kept, as stated." : "They are left out as place-holders.")}"));

    public static Finding NumberTwice(string name, SurveyPoint first) => new(
        Warning, "NumberTwice",
        Text($"Point {name} also stands in line {first.Line}, at another place or height. Both are kept."),
        "Check which is right.");

    public static Finding RowsRepeated(int count) => new(
        Information, "RowsRepeated",
        Text($"{Count(count, "row repeats", "rows repeat")} a point with the same place and height; it counts once."));

    public static Finding TwoHeights(SurveyPoint first, double height, double other) => new(
        Warning, "TwoHeights", Text($"At the place of line {first.Line} (point {first.Name}, height {other:0.###}) the height here is {height:0.###}. The ground takes the first."),
        "Delete one, or move it by a hair if it is the top or foot of a wall.");

    public static Finding Stray(double times) => new(
        Warning, "StrayPoint",
        Text($"The point lies {times:0} times as far from the middle as half of all points do. It is kept."),
        "Check its coordinates.");

    public static Finding NoHeights(int count) => new(
        Information, "NoHeights",
        Text($"{Count(count, "point has", "points have")} no height (blank or a mark such as -9999) and {(count == 1 ? "is" : "are")} no ground."));

    public static Finding ZeroHeights(int count, double lowest, double highest) => new(
        Warning, "ZeroHeights", Text($"{Count(count, "point has", "points have")} height 0 while all others lie between {lowest:0.###} and {highest:0.###}. They are taken to have none."),
        "State that zero is a height if it is.");

    // Breaklines
    public static Finding LinesMade(int lines, int points) => new(
        Information, "LinesMade",
        Text($"{Count(lines, "breakline was", "breaklines were")} made of {Count(points, "point", "points")} by their codes."),
        "Look at them on the map: codes are habits of one office.");

    public static Finding CodeNotFound(string code) => new(
        Warning, "CodeNotFound",
        $"No line came of the code '{code}'.",
        "Check how the file writes it.");

    public static Finding LongSteps(int count) => new(
        Information, "LongSteps",
        Text($"Breaklines were cut at {Count(count, "step", "steps")} longer than stated."));

    // Questions
    public static string ColumnQuestion(string separator, int rows) =>
        Text($"Which column is north, and which is east? The file has {Count(rows, "row", "rows")} of points, split by {separator}, and no header that says it.");

    public static string ColumnChoice(ColumnOrder order, SurveyPoint sample) =>
        Text($"{order.Text}: {(sample.Name.Length > 0 ? $"point {sample.Name} " : "")}at north {sample.North}, east {sample.East}{(sample.Height is { } h ? Text($", height {h}") : "")}{(sample.Description.Length > 0 ? $", '{Cut(sample.Description)}'" : "")}");

    public static string PlaceHolderQuestion(int rows, string place) => Text($"{rows} rows stand at one and the same place, {place}. Are they place-holders?");

    public static string SeparatorName(char separator) => separator switch
    {
        '\t' => "tabs",
        ';' => "semicolons",
        ',' => "commas",
        ' ' => "blanks",
        _ => $"'{separator}'",
    };

    private static string Cut(string text) => text.Length <= 60 ? text : text[..60] + "...";
}
