using System.Globalization;
using Tautline.Desk;
using Tautline.Documents.Words;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;

namespace Tautline.FieldScreens.Inspect;

/// <summary>Checks in the words of the page.</summary>
public sealed class CheckSay(Session session, Phrases say)
{
    public string Name(CheckItem item) => say["inspect.check." + item.Key] + (item.Optional ? " " + say["inspect.optional"] : "");

    public string Tolerance(CheckItem item) => ToleranceText.Of(say, item.Least?.Value, item.Most?.Value, v => Value(item.Measure, v), item.FromPlan);

    public string Source(CheckItem item) => string.Join("; ", new[] { item.Least?.From ?? item.From, item.Most?.From ?? item.From }.Select(f => ToleranceText.Source(say, f)).Distinct());

    public string Value(CheckMeasure measure, double value) => measure switch
    {
        CheckMeasure.Degrees => ToleranceText.Degrees(value),
        CheckMeasure.Days => say.Count("paper.days", (int)Math.Round(value)),
        _ => ToleranceText.Length(session.Words, value),
    };

    public string Found(CheckItem item, LogEntry entry)
        => (entry.Found!.Measured is { } measured ? Value(item.Measure, measured) + ", " : "") + say["inspect.verdict." + (entry.Found.Passed ? "passed" : "failed")] + (entry.Text.Length > 0 ? ", " + entry.Text : "");

    public string Unit(CheckMeasure measure) => say["inspect.unit." + measure switch
    {
        CheckMeasure.Degrees => "degree",
        CheckMeasure.Days => "day",
        _ => session.Job.Units == UnitSystem.Metric ? "millimetre" : "inch",
    }];

    /// <summary>Metres, degrees or days; nothing where it is no measure.</summary>
    public double? Read(CheckMeasure measure, string text)
    {
        text = text.Trim().Replace('−', '-');
        if (text.Length == 0) return null;
        if (measure is CheckMeasure.Degrees or CheckMeasure.Days)
            return double.TryParse(text.TrimEnd('°').Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number < 10_000 ? number : null;
        bool below = text.StartsWith('-');
        Parsed<Length> read = LengthText.Parse(below ? text[1..] : text, session.Job.Units == UnitSystem.Metric ? LengthUnit.Millimetre : LengthUnit.Inch);
        return read.Ok ? below ? -read.Value.Metres : read.Value.Metres : null;
    }

    /// <summary>An entry of the log in one line.</summary>
    public static string Told(Phrases say, LogEntry entry) => entry switch
    {
        { Found: { Item: Checked.SignOff } signed } => say.Say("inspect.toldSign", ("stage", say.Or("inspect.stage." + signed.Stage, signed.Stage ?? "")), ("who", signed.By ?? "")),
        { Found: { } found } => say.Say("inspect.told", ("check", say.Or("inspect.check." + found.Item, found.Item)), ("verdict", say["inspect.verdict." + (found.Passed ? "passed" : "failed")])) + (entry.Text.Length > 0 ? ", " + entry.Text : ""),
        _ => say.Say("inspect.toldPunch", ("state", say.Or("inspect.state." + (entry.Punched?.State ?? (entry.Mended == true ? PunchItem.Accepted : PunchItem.Open)), entry.Punched?.State ?? ""))) + (entry.Text.Length > 0 ? ", " + entry.Text : ""),
    };

    /// <summary>A run or gate by its name.</summary>
    public string Place(bool gate, int line, int at)
    {
        LinePlan l = session.Plan.Lines[line];
        if (gate) return say.Say("field.gate", ("id", l.Gates[at].Id.Value));
        return say.Say("field.run", ("line", l.Name.Length > 0 ? l.Name : l.Id.Value), ("n", l.Runs[at].Number), ("from", PlanWords.Mark(line, l.Posts[l.Runs[at].FromPost])), ("to", PlanWords.Mark(line, l.Posts[l.Runs[at].ToPost])));
    }
}
