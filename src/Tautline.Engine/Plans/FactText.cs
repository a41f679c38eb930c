using System.Globalization;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Plans;

/// <summary>What came of reading the name of a fact.</summary>
/// <param name="Key">The fact, where the plan has it.</param>
/// <param name="Message">What was found instead of a fact's name; empty where there is a key.</param>
/// <param name="Near">Names that exist where the text went wrong.</param>
public sealed record FactReading(FactKey? Key, string Message, IReadOnlyList<string> Near);

/// <summary>
/// The names of facts as people write them: post/yard/7/hole-depth, run/yard/2/rail-ties, end/yard/2/start/bands,
/// gate/yard/1/leaf, work/yard/1/work-area, grading/yard/1/grading-volume, temporary/1/panels, spec/fence/advance-low, takeoff/3/purchase. Numbers count from 1; in an id '/' is written %2F and '%' %25.
/// </summary>
public static class FactText
{
    private const string Start = "start", Finish = "finish";

    private static readonly string[] groups = ["spec", "post", "run", "end", "gate", "work", "grading", "temporary", "takeoff"];

    /// <summary>The name of a fact of this plan.</summary>
    public static string Format(Plan plan, FactKey key)
    {
        var name = FactNames.Of(key.Kind);
        return GroupOf(key.Kind) switch
        {
            "spec" => $"spec/{Escaped(plan.Specs[key.Line].Id.Value)}/{name}",
            "takeoff" => $"takeoff/{Number(key.Line)}/{name}",
            "temporary" => $"temporary/{Number(key.Line)}/{name}",
            "end" => $"end/{LineOf(plan, key)}/{Number(key.Item)}/{(key.End == 0 ? Start : Finish)}/{name}",
            var group => $"{group}/{LineOf(plan, key)}/{Number(key.Item)}/{name}",
        };
    }

    /// <summary>What the fact is, for a heading: 'hole depth of post 7 of line yard'.</summary>
    public static string Title(Plan plan, FactKey key)
    {
        var name = FactNames.Of(key.Kind).Replace('-', ' ');
        var number = Number(key.Item);
        return GroupOf(key.Kind) switch
        {
            "spec" => $"{name} of spec {plan.Specs[key.Line].Id.Value}",
            "takeoff" => $"{name} of take-off line {Number(key.Line)}, {plan.Takeoff[key.Line].Name}",
            "temporary" => $"{name} of temporary fence {Number(key.Line)}",
            "end" => $"{name} at the {(key.End == 0 ? Start : Finish)} of run {number} of line {Named(plan.Lines[key.Line])}",
            var group => $"{name} of {group} {number} of line {Named(plan.Lines[key.Line])}",
        };
    }

    /// <summary>A line by the name people gave it.</summary>
    private static string Named(LinePlan line) => line.Name.Length > 0 ? line.Name : line.Id.Value;

    /// <summary>Reads a name. Never throws: where it goes wrong the message says what the plan has there.</summary>
    public static FactReading Parse(Plan plan, string text)
    {
        var steps = text.Trim().Trim('/').Split('/').Select(Unescaped).ToArray();
        return steps[0] switch
        {
            "spec" => OfSpec(plan, steps),
            "takeoff" => OfTakeoff(plan, steps),
            "temporary" => OfTemporary(plan, steps),
            "post" or "run" or "gate" or "end" or "work" or "grading" => OfLine(plan, steps),
            _ => Missing($"'{steps[0]}' is no kind of fact.", groups.Select(g => $"{g}/...")),
        };
    }

    private static FactReading OfSpec(Plan plan, string[] steps)
    {
        var ids = plan.Specs.Select(s => s.Id.Value).ToList();
        var at = steps.Length > 1 ? ids.IndexOf(steps[1]) : -1;
        return at < 0 ? MissingIn("spec", steps, 1, ids.Select(Escaped)) : Last(plan, steps, 2, "spec", new(default, at));
    }

    private static FactReading OfTakeoff(Plan plan, string[] steps)
        => Index(steps, 1, plan.Takeoff.Count) is { } at
            ? Last(plan, steps, 2, "takeoff", new(default, at))
            : MissingNumber("take-off line", steps, 1, plan.Takeoff.Count);

    private static FactReading OfTemporary(Plan plan, string[] steps)
        => Index(steps, 1, plan.Temporary.Count) is { } at
            ? Last(plan, steps, 2, "temporary", new(default, at))
            : MissingNumber("temporary fence", steps, 1, plan.Temporary.Count);

    private static FactReading OfLine(Plan plan, string[] steps)
    {
        var ids = plan.Lines.Select(l => l.Id.Value).ToList();
        var line = steps.Length > 1 ? ids.IndexOf(steps[1]) : -1;
        if (line < 0) return MissingIn("line", steps, 1, ids.Select(Escaped));
        var count = steps[0] switch
        {
            "post" => plan.Lines[line].Posts.Count,
            "gate" => plan.Lines[line].Gates.Count,
            "work" => plan.Lines[line].Works.Count,
            "grading" => plan.Lines[line].Grading.Count,
            _ => plan.Lines[line].Runs.Count,
        };
        if (Index(steps, 2, count) is not { } item) return MissingNumber(steps[0] == "end" ? "run" : steps[0], steps, 2, count);
        if (steps[0] != "end") return Last(plan, steps, 3, steps[0], new(default, line, item));
        return steps.Length > 3 && steps[3] is (Start or Finish)
            ? Last(plan, steps, 4, "end", new(default, line, item, steps[3] == Start ? 0 : 1))
            : MissingIn("end of a run", steps, 3, [Start, Finish]);
    }

    private static FactReading Last(Plan plan, string[] steps, int at, string group, FactKey of)
    {
        var kinds = Enum.GetValues<FactKind>().Where(k => GroupOf(k) == group && Facts.Value(plan, of with { Kind = k }) is not null).ToList();
        if (steps.Length == at + 1 && FactNames.Find(steps[at]) is { } kind && kinds.Contains(kind)) return new(of with { Kind = kind }, "", []);
        return MissingIn("fact of this", steps, at, kinds.Select(FactNames.Of));
    }

    private static FactReading MissingIn(string what, string[] steps, int at, IEnumerable<string> there)
    {
        var before = string.Join('/', steps.Take(at).Select(Escaped));
        var names = there.Select(n => $"{before}/{n}").ToList();
        var message = steps.Length > at ? $"'{steps[at]}' is no {what}." : $"'{before}' names no single fact.";
        return Missing(message, at < steps.Length ? names.OrderBy(n => Distance(n, $"{before}/{steps[at]}")) : names);
    }

    private static FactReading MissingNumber(string what, string[] steps, int at, int count)
    {
        var before = string.Join('/', steps.Take(at).Select(Escaped));
        if (count == 0) return Missing($"There is no {what} here.", []);
        var found = steps.Length > at ? $"'{steps[at]}' is no {what}" : $"'{before}' names no single fact";
        return Missing(string.Create(CultureInfo.InvariantCulture, $"{found}; they are numbered 1 to {count}."), [$"{before}/1/...", $"{before}/{count}/..."]);
    }

    private static FactReading Missing(string message, IEnumerable<string> near) => new(null, message, [.. near.Distinct()]);

    private static int? Index(string[] steps, int at, int count)
        => steps.Length > at && int.TryParse(steps[at], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= count
            ? number - 1
            : null;

    private static string GroupOf(FactKind kind) => kind switch
    {
        <= FactKind.RingEvery => "spec",
        <= FactKind.PostTies => "post",
        <= FactKind.BayPiece => "run",
        <= FactKind.ColumnsHigh => "end",
        <= FactKind.Leaves => "gate",
        <= FactKind.WorkVolume => "work",
        <= FactKind.GradingVolume => "grading",
        <= FactKind.Ballast => "temporary",
        _ => "takeoff",
    };

    private static string LineOf(Plan plan, FactKey key) => Escaped(plan.Lines[key.Line].Id.Value);

    private static string Number(int index) => (index + 1).ToString(CultureInfo.InvariantCulture);

    private static string Escaped(string id)
        => id.Replace("%", "%25", StringComparison.Ordinal).Replace("/", "%2F", StringComparison.Ordinal);

    private static string Unescaped(string step)
        => step.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase).Replace("%25", "%", StringComparison.Ordinal);

    /// <summary>Single letters to put in, take out or change, to make one word of another.</summary>
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
                (corner, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1)));
        }
        return row[^1];
    }
}
