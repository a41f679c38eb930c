using System.Globalization;
using System.Text.Json;
using Tautline.Documents.Words;
using Tautline.Engine.Catalog;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

/// <summary>What the log and the job's conflicts say, in the words of the phone.</summary>
internal sealed class FieldWords(UnitSystem units, FieldClock clock)
{
    private static readonly Dictionary<string, string> things = new(StringComparer.Ordinal)
    {
        ["specs"] = "spec",
        ["lines"] = "line",
        ["vertices"] = "vertex",
        ["legs"] = "leg",
        ["gates"] = "gate",
        ["obstacles"] = "obstacle",
        ["pins"] = "pin",
        ["works"] = "work",
        ["asSpecified"] = "limit",
    };

    private static readonly Dictionary<string, CheckMeasure> measures = InspectionList.Of(RuleSets.Base).ToDictionary(i => i.Key, i => i.Measure, StringComparer.Ordinal);

    public Phrases Say { get; } = Phrases.Of(Phrases.English);

    public PlanWords Words { get; } = new(units);

    public FieldClock Clock { get; } = clock;

    public string Work(string? operation) => operation is null ? "not said" : Say.Or("field.op." + operation, operation);

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Number(decimal value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>Cents as whole money, without a sign: the job names no currency.</summary>
    public static string Money(long cents) => (cents / 100m).ToString("#,0.00", CultureInfo.InvariantCulture);

    /// <summary>One entry in a line.</summary>
    public string Told(LogEntry entry) => Joined(What(entry), entry.Kind == LogEntry.Photo || entry.Photos is not { Count: > 0 } photos ? "" : Say.Count("photo.n", photos.Count));

    private string What(LogEntry entry) => entry switch
    {
        { TakesBack: true } => $"takes back {entry.Supersedes}",
        { Done: { Posts.Count: > 0 } done } => $"{Work(done.Operation)}, {Say.Count("field.nPosts", done.Posts.Count)} ({Posts(done)})",
        { Done: { } done } => Joined(Work(done.Operation), Place(entry)),
        { Worked: { } worked } => Say.Say("field.toldHours", ("n", Number(worked.Hours)), ("work", worked.Operation is { } on ? Work(on) : "")).TrimEnd(),
        { Locate: { } ticket } => $"{Say["field.ticket"]} {ticket.Number}, {Days(ticket)}",
        { Changed: { } change } => Joined($"{entry.Text}: {Number(change.Quantity)} {change.Unit} x {Money(change.UnitCents)} = {Money(change.TotalCents)}", Place(entry), $"signed {change.Signer}"),
        { Found: { Item: Checked.SignOff } found } => Joined(Say.Say("inspect.toldSign", ("stage", Say.Or("inspect.stage." + found.Stage, found.Stage ?? "")), ("who", found.By ?? "")), entry.Text),
        { Found: { } found } => Joined(Check(found.Item), Measured(found), Verdict(found), Place(entry), entry.Text),
        { Used: { } used } => Joined($"{Number(used.Quantity)} {used.Unit} {used.Called}", entry.Text),
        { Seen: { } seen } => Joined(Weather(seen), entry.Text),
        { Held: { } held } => Say.Say("diary.toldTalk", ("topic", entry.Text), ("people", string.Join(", ", held.People))),
        { Kind: LogEntry.Photo } => Joined(Say.Count("photo.n", entry.Photos?.Count ?? 0), entry.Text, Place(entry)),
        { Kind: LogEntry.Punch } => Joined(Say.Say("inspect.toldPunch", ("state", State(entry.Punched?.State ?? (entry.Mended == true ? PunchItem.Accepted : PunchItem.Open)))), entry.Punched?.Of?.ToString() ?? "", entry.Text, Place(entry)),
        _ when !LogEntry.Kinds.Contains(entry.Kind) => Say["field.unknown"],
        _ => Joined(entry.Text, Place(entry)),
    };

    public string Days(LocateTicket ticket) => $"{Clock.FirstDay(ticket)} to {Clock.LastDay(ticket)}";

    /// <summary>A check by its name; one this program does not know by its key.</summary>
    public string Check(string key) => Say.Or("inspect.check." + key, key);

    public string Verdict(Checked found) => Say["inspect.verdict." + (found.Passed ? "passed" : "failed")];

    public string State(string state) => Say.Or("inspect.state." + state, state);

    /// <summary>In metres, degrees or days, as the check is measured; of a check this program does not know the bare number.</summary>
    public string Measured(Checked found) => found.Measured is not { } measured ? "" : measures.GetValueOrDefault(found.Item, CheckMeasure.Look) switch
    {
        CheckMeasure.Length => Words.Signed(new Length(measured)),
        CheckMeasure.Degrees => $"{Number(measured)} {Say["inspect.unit.degree"]}",
        CheckMeasure.Days => $"{Number(measured)} {Say["inspect.unit.day"]}",
        _ => Number(measured),
    };

    public string Place(LogEntry entry) => entry.Place is not { } place ? "" : $"{(place.Called.Length > 0 ? place.Called : place.Leg.Value)}, {Words.Long(place.At)} along its leg";

    /// <summary>'Gate office: opening'.</summary>
    public string What(Conflict conflict)
    {
        var of = string.Join(", ", JobFieldNames.Things(conflict.Path).Select(Thing));
        var fields = string.Join(", ", JobFieldNames.Fields(conflict.Path).Select(Field));
        return of.Length == 0 ? fields : fields.Length == 0 ? of : $"{of}: {fields}";
    }

    public string Value(Conflict conflict, string? value)
    {
        if (value is null) return Say["field.gone"];
        if (value == JobFlat.There) return Say["field.there"];
        using var read = JsonDocument.Parse(value);
        return Text(JobFieldNames.Fields(conflict.Path) is [var first, ..] ? first : "", read.RootElement, 0);
    }

    private static string Joined(params ReadOnlySpan<string> parts)
    {
        List<string> kept = [];
        foreach (var part in parts)
            if (part.Length > 0) kept.Add(part);
        return string.Join(", ", kept.Select((part, i) => i < kept.Count - 1 ? part.TrimEnd('.') : part));
    }

    private static string Posts(WorkDone done) => done.Posts.Count > 1 ? $"{done.Posts[0].Number} to {done.Posts[^1].Number}" : $"{done.Posts[0].Number}";

    private string Weather(WeatherSeen seen) => Joined(
        Say.Or("diary.sky." + seen.Sky, seen.Sky), seen.Wind.Length > 0 ? $"wind {Say.Or("diary.wind." + seen.Wind, seen.Wind)}" : "",
        seen.Celsius is not { } c ? "" : Words.Units == UnitSystem.Metric ? $"{Number(c)} °C" : $"{(c * 1.8 + 32).ToString("0", CultureInfo.InvariantCulture)} °F");

    private string Thing((string List, string Name) thing)
        => thing.Name.Length == 0 ? Say["conflict.leg"]
            : thing.List == "gates" ? Say.Say("field.gate", ("id", thing.Name))
            : things.TryGetValue(thing.List, out var kind) ? Say.Say("what." + kind, ("id", thing.Name)) : $"{Say.Or("conflict." + thing.List, thing.List)} {thing.Name}";

    private string Field(string name) => Say.Or("conflict." + name, name);

    private string Text(string name, JsonElement value, int depth) => value.ValueKind switch
    {
        JsonValueKind.Number when JobFieldNames.Lengths.Contains(name) => Words.Long(new Length(value.GetDouble())),
        JsonValueKind.Number when JobFieldNames.Slopes.Contains(name) => $"{Number(value.GetDouble() * 100)} %",
        JsonValueKind.String => value.GetString()!,
        JsonValueKind.True => Say["yes"],
        JsonValueKind.False => Say["no"],
        JsonValueKind.Object when depth < 2 => string.Join(", ", value.EnumerateObject().Select(p => $"{Field(p.Name)} {Text(p.Name, p.Value, depth + 1)}")),
        JsonValueKind.Object or JsonValueKind.Array => Say["conflict.much"],
        _ => value.GetRawText(),
    };
}
