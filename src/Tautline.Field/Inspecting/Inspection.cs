using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.Inspecting;

public enum CheckVerdict
{
    /// <summary>Not made, or not on every post yet.</summary>
    Open,
    Passed,
    Failed,
}

/// <summary>One check on one run or gate, as it stands.</summary>
/// <param name="At">Index of the run in its line; of the gate where the check is made on gates.</param>
/// <param name="Whole">The last reading of the run or gate as a whole; nothing where there is none.</param>
/// <param name="Posts">Of a check on posts the last reading of each that came after the whole run was last looked at, walking forward.</param>
/// <param name="Of">How many posts there are to look at.</param>
public sealed record CheckRow(CheckItem Item, int Line, int At, CheckVerdict Verdict, LogEntry? Whole, IReadOnlyList<(int Post, LogEntry Entry)> Posts, int Of);

/// <summary>Something that is to be put right, or was.</summary>
/// <param name="Opened">The entry that opened it: a failed check or an item of its own.</param>
/// <param name="State">One of those of <see cref="PunchItem"/>.</param>
/// <param name="Item">The check that failed; nothing for an item of its own.</param>
/// <param name="Last">The entry that moved it last.</param>
public sealed record PunchRow(LogEntry Opened, string State, CheckItem? Item, LogEntry Last)
{
    public bool Accepted => State == PunchItem.Accepted;
}

/// <summary>A stage of the work: its checks, and who signed for it.</summary>
/// <param name="Signed">The sign-off that holds; nothing where there is none, or a check failed since.</param>
/// <param name="Waiting">Punch items that are not accepted: none may be left when the whole is signed for.</param>
public sealed record StageState(InspectionStage Stage, IReadOnlyList<CheckRow> Rows, LogEntry? Signed, int Waiting)
{
    public int Passed => Rows.Count(r => r.Verdict == CheckVerdict.Passed);

    public int Failed => Rows.Count(r => r.Verdict == CheckVerdict.Failed);

    /// <summary>Checks that are still to make; what only some specifications ask for is not among them.</summary>
    public int Open => Rows.Count(r => r.Verdict == CheckVerdict.Open && !r.Item.Optional);

    public bool MaySign => Failed == 0 && Open == 0 && (Stage != InspectionStage.Finished || Waiting == 0);
}

/// <summary>
/// What was looked at and how it came out: a fold of the log over the plan's runs and gates. A later reading takes the place of an earlier one; a reading of a whole run,
/// which is of its worst place, takes the place of those of its posts.
/// </summary>
/// <param name="Astray">Checks of places the job does not have any more, and of checks this program does not know: kept.</param>
public sealed record Inspection(IReadOnlyList<StageState> Stages, IReadOnlyList<PunchRow> Punch, IReadOnlyList<LogEntry> Astray)
{
    public const string WholeRun = "run";
    public const string OnePost = "post";
    public const string OneGate = "gate";

    public int Waiting => Punch.Count(p => !p.Accepted);

    public StageState this[InspectionStage stage] => Stages.First(s => s.Stage == stage);

    public static Inspection Of(Plan plan, LogState log)
    {
        List<Reading> readings = [];
        List<LogEntry> astray = [];
        foreach (var entry in log.Standing.Where(e => e.Found is { } found && found.Item != Checked.SignOff))
            if (Reading.Of(plan, entry) is { } reading) readings.Add(reading);
            else astray.Add(entry);
        var byPlace = readings.ToLookup(r => (r.Entry.Found!.Item, r.Gate, r.Line, r.At));
        List<CheckRow> rows = [];
        for (var l = 0; l < plan.Lines.Count; l++)
        {
            var posts = RunPosts.Of(plan.Lines[l]);
            for (var r = 0; r < plan.Lines[l].Runs.Count; r++)
                foreach (var item in InspectionList.OfRun(plan, l, r)) rows.Add(Row(item, l, r, [.. byPlace[(item.Key, false, l, r)]], posts[r].Count));
            for (var g = 0; g < plan.Lines[l].Gates.Count; g++)
                foreach (var item in InspectionList.OfGate(plan, l, g)) rows.Add(Row(item, l, g, [.. byPlace[(item.Key, true, l, g)]], 0));
        }
        var known = rows.Select(r => (r.Item.Key, Gate: r.Item.Subject == CheckSubject.Gate, r.Line, r.At)).ToHashSet();
        astray.AddRange(readings.Where(r => !known.Contains((r.Entry.Found!.Item, r.Gate, r.Line, r.At))).Select(r => r.Entry));
        var punch = Punches(log, rows, readings);
        var place = log.Standing.Select((e, i) => (e, i)).ToDictionary(p => (object)p.e, p => p.i, ReferenceEqualityComparer.Instance);
        var stages = Enum.GetValues<InspectionStage>().Select(s => Stage(s, [.. rows.Where(r => r.Item.Stage == s)], log, readings, place, punch)).ToList();
        return new(stages, punch, astray);
    }

    private static CheckRow Row(CheckItem item, int line, int at, IReadOnlyList<Reading> readings, int posts)
    {
        var whole = readings.LastOrDefault(r => r.Post is null);
        var since = whole is null ? readings : [.. readings.SkipWhile(r => r != whole).Skip(1)];
        List<(int Post, LogEntry Entry)> each = [.. since.Where(r => r.Post is not null).GroupBy(r => r.Post!.Value).OrderBy(g => g.Key).Select(g => (g.Key, g.Last().Entry))];
        var failed = whole is { Entry.Found.Passed: false } || each.Any(p => !p.Entry.Found!.Passed);
        var made = whole is not null || posts > 0 && each.Count >= posts;
        return new(item, line, at, failed ? CheckVerdict.Failed : made ? CheckVerdict.Passed : CheckVerdict.Open, whole?.Entry, each, item.Subject == CheckSubject.Post ? posts : 0);
    }

    private static StageState Stage(
        InspectionStage stage, IReadOnlyList<CheckRow> rows, LogState log, List<Reading> readings, Dictionary<object, int> place, IReadOnlyList<PunchRow> punch)
    {
        var keys = rows.Select(r => r.Item.Key).ToHashSet(StringComparer.Ordinal);
        var fell = readings.Where(r => keys.Contains(r.Entry.Found!.Item) && !r.Entry.Found.Passed).Select(r => place[r.Entry]).DefaultIfEmpty(-1).Max();
        var signed = log.Standing.LastOrDefault(e => e.Found is { Item: Checked.SignOff, Passed: true } found && found.Stage == Name(stage));
        return new(stage, rows, signed is not null && place[signed] > fell ? signed : null, punch.Count(p => !p.Accepted));
    }

    /// <summary>What a stage is called in the log.</summary>
    public static string Name(InspectionStage stage) => stage.ToString().ToLowerInvariant();

    private static List<PunchRow> Punches(LogState log, IReadOnlyList<CheckRow> rows, List<Reading> readings)
    {
        var items = rows.GroupBy(r => r.Item.Key).ToDictionary(g => g.Key, g => g.First().Item, StringComparer.Ordinal);
        var readingOf = readings.ToDictionary(r => (object)r.Entry, ReferenceEqualityComparer.Instance);
        Dictionary<LogKey, PunchRow> all = [];
        // The item that is open at a place, by its check: of a run as a whole or of one post.
        Dictionary<(string, bool, int, int, int?), LogKey> at = [];
        foreach (var entry in log.Standing)
        {
            if (entry.Kind == LogEntry.Punch) Move(entry, all);
            if (!readingOf.TryGetValue(entry, out var reading) || !items.TryGetValue(entry.Found!.Item, out var item)) continue;
            var key = (item.Key, reading.Gate, reading.Line, reading.At, reading.Post);
            if (entry.Found.Passed)
            {
                // A look at the whole run that finds nothing amiss accepts what was amiss at its posts too.
                foreach (var open in at.Where(o => o.Key == key || reading.Post is null && (o.Key.Item1, o.Key.Item2, o.Key.Item3, o.Key.Item4) == (item.Key, reading.Gate, reading.Line, reading.At)).ToList())
                {
                    all[open.Value] = all[open.Value] with { State = PunchItem.Accepted, Last = entry };
                    at.Remove(open.Key);
                }
            }
            else if (at.TryGetValue(key, out var opened) && !all[opened].Accepted) all[opened] = all[opened] with { State = PunchItem.Open, Last = entry };
            else
            {
                all[entry.Key] = new(entry, PunchItem.Open, item, entry);
                at[key] = entry.Key;
            }
        }
        return [.. all.Values];
    }

    private static void Move(LogEntry entry, Dictionary<LogKey, PunchRow> all)
    {
        if (entry.Punched is not { Of: { } of } moved) all[entry.Key] = new(entry, entry.Punched is null && entry.Mended == true ? PunchItem.Accepted : PunchItem.Open, null, entry);
        // Who says 'mended' of what is accepted already only comes late.
        else if (all.TryGetValue(of, out var item) && !(item.Accepted && moved.State == PunchItem.Mended))
            all[of] = item with { State = moved.State is PunchItem.Mended or PunchItem.Accepted ? moved.State : PunchItem.Open, Last = entry };
    }

    /// <summary>An entry's check and where it is on the plan as it is now.</summary>
    private sealed record Reading(LogEntry Entry, bool Gate, int Line, int At, int? Post)
    {
        private static readonly Length nearPost = Length.FromInches(6);

        public static Reading? Of(Plan plan, LogEntry entry)
        {
            if (entry.Place is not { } place) return null;
            for (var l = 0; l < plan.Lines.Count; l++)
                if (Today.StationOf(plan, l, place) is { } station && On(plan, entry, l, station) is { } reading) return reading;
            return null;
        }

        private static Reading? On(Plan plan, LogEntry entry, int l, Length station)
        {
            var line = plan.Lines[l];
            switch (entry.Found!.Of)
            {
                case OneGate:
                    for (var g = 0; g < line.Gates.Count; g++)
                        if (line.Posts[line.Gates[g].FromPost].Station is var near && station > near && station < near + line.Gates[g].Centres) return new(entry, true, l, g, null);
                    return null;
                case OnePost:
                    var posts = RunPosts.Of(line);
                    for (var r = 0; r < posts.Count; r++)
                        foreach (var p in posts[r])
                            if (Math.Abs((line.Posts[p].Station - station).Metres) < nearPost.Metres) return new(entry, false, l, r, p);
                    return null;
                default:
                    for (var r = 0; r < line.Runs.Count; r++)
                        if (line.Posts[line.Runs[r].FromPost].Station is var from && station > from && station < from + line.Runs[r].Level) return new(entry, false, l, r, null);
                    return null;
            }
        }
    }
}

/// <summary>What a person found, as the payload of an entry.</summary>
public static class CheckMarking
{
    /// <summary>A run or gate as a whole, or one post of a run.</summary>
    /// <param name="post">Index in the line; nothing for the whole run, or for a gate.</param>
    /// <param name="measured">Metres, degrees or days; nothing where it was looked at.</param>
    /// <param name="passed">What the eye found; a measured value is judged by the tolerance instead.</param>
    public static (Checked Found, LogPlace Place) Of(Plan plan, CheckItem item, int line, int at, int? post, double? measured, bool passed)
    {
        var l = plan.Lines[line];
        var about = post is { } p ? InspectionList.OfPost(item, l.Posts[p]) : item;
        var found = new Checked
        {
            Item = item.Key,
            Measured = measured,
            Passed = measured is { } value ? about.Passes(value) : passed,
            Of = item.Subject == CheckSubject.Gate ? Inspection.OneGate : post is null ? Inspection.WholeRun : Inspection.OnePost,
            Least = about.Least?.Value,
            Most = about.Most?.Value,
        };
        var station = item.Subject == CheckSubject.Gate ? l.Posts[l.Gates[at].FromPost].Station + l.Gates[at].Centres / 2
            : post is { } one ? l.Posts[one].Station : l.Posts[l.Runs[at].FromPost].Station + l.Runs[at].Level / 2;
        return (found, Marking.PlaceAt(plan, line, station));
    }
}
