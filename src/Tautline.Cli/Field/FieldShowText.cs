using System.Globalization;
using Tautline.Cli.Terminal;
using Tautline.Documents.Words;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <summary>What a field file holds, for people.</summary>
internal sealed class FieldShowText(FieldState state, FieldWords words, DateOnly day, Paper paper)
{
    private Phrases Say => words.Say;

    public string Write(bool entries)
    {
        Head();
        Dig();
        if (state is { Plan: { } plan, Today: { } today, Built: { } built })
        {
            Runs(plan.Now, today);
            Built(built);
            Differences(built);
        }
        else Skipped();
        Changes();
        Hours();
        Checks();
        Conflicts();
        Findings();
        Devices();
        if (entries) Entries();
        else Others();
        return paper.ToString();
    }

    private void Head()
    {
        var exchange = state.File.Exchange;
        var name = state.Job is { Name.Length: > 0 } job ? job.Name : exchange.Job.Value;
        var all = FieldEntry.Of(exchange.Log, state.Log);
        paper.Heading($"{name}: what was handed over from the field");
        List<(string, string)> lines =
        [
            ("job", exchange.Job.Value),
            ("log", all.Count == 0 ? "nothing is written yet" : $"{Entry(all.Count)}, {all.Count(e => e.Stands)} of them stand, {words.Clock.Text(all.Min(e => e.Entry.At))} to {words.Clock.Text(all.Max(e => e.Entry.At))} ({words.Clock.Zone})"),
            ("edits", $"{PlanWords.Count(exchange.Shared.Count, "edit")} of the job since it was shared, {PlanWords.Count(exchange.Shared.Conflicts.Count, "open conflict")}"),
            ("photos", Photos()),
        ];
        paper.Labelled(lines);
    }

    private string Photos()
    {
        var (file, named) = (state.File, state.File.PhotosNamed);
        if (!file.IsZip) return named.Count == 0 ? "none" : $"none in this file; its log names {Say.Count("photo.n", named.Count)}, which come with the ZIP";
        var (away, nameless) = (named.Except(file.Photos).Count(), file.Photos.Except(named).Count());
        return $"{file.Photos.Count} in the ZIP{(away > 0 ? $"; {away} more named in the log and not in it" : "")}{(nameless > 0 ? $"; {nameless} named by no entry" : "")}";
    }

    private void Dig()
    {
        var shown = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var dig = DigWatch.Of(state.Log, words.Clock.Noon(day));
        paper.Heading($"Digging on {shown}");
        paper.Line($"  {Say["field.dig." + dig.Word.ToString().ToLowerInvariant()]}");
        foreach (var entry in state.Log.Standing.Where(e => e.Locate is not null))
            paper.Line($"  Ticket {entry.Locate!.Number}, {words.Days(entry.Locate)}{(entry.Locate == dig.Ticket && dig.MayDig ? ", in force" : "")}");
        paper.Line($"  {Say["field.dig.marks"]}");
    }

    private void Skipped()
    {
        paper.Heading("Work and what stands");
        paper.Line("  not shown: the job as it is now has errors, and without a plan no work can be placed");
    }

    private void Runs(Engine.Plans.Plan plan, Today today)
    {
        string[] operations = [.. Operations.All.Where(o => o != Operations.Gate)];
        paper.Heading("Work by run: posts done of posts, then the run as a whole");
        paper.Table(
            ["run", "from, to", .. operations.Select(o => ">" + o), "next"],
            today.Rows.Where(r => r.Operation != Operations.Gate).GroupBy(r => (r.Line, r.Run)).Select(IReadOnlyList<string> (g) =>
                [Run(plan, g.Key.Line, g.Key.Run), Ends(plan, g.Key.Line, g.Key.Run), .. operations.Select(o => Share(g.First(r => r.Operation == o))), today.Next(g.Key.Line, g.Key.Run) is { } next ? words.Work(next.Operation) : "done"]));
        var gates = today.Rows.Where(r => r.Operation == Operations.Gate).ToList();
        if (gates.Count == 0) return;
        paper.Line();
        paper.Table(
            ["gate", ">opening", "hung"],
            gates.Select(IReadOnlyList<string> (r) => [plan.Lines[r.Line].Gates[r.Run].Id.Value, words.Words.Long(plan.Lines[r.Line].Gates[r.Run].Opening), r.Finished ? "yes" : "no"]));
    }

    private string Run(Engine.Plans.Plan plan, int line, int run) => Say.Say("asbuilt.runName", ("line", Name(plan.Lines[line])), ("n", plan.Lines[line].Runs[run].Number));

    private static string Ends(Engine.Plans.Plan plan, int line, int run)
        => plan.Lines[line] is var of ? $"{PlanWords.Mark(line, of.Posts[of.Runs[run].FromPost])} to {PlanWords.Mark(line, of.Posts[of.Runs[run].ToPost])}" : "";

    private static string Name(LinePlan line) => line.Name.Length > 0 ? line.Name : line.Id.Value;

    private static string Share(TodayRow row) => Operations.OfPosts(row.Operation) ? $"{row.Done}/{row.Of}" : row.Finished ? "done" : "-";

    private void Built(BuiltRecord built)
    {
        paper.Heading("What is built");
        paper.Labelled(built.Progress.Figures.Select(f => (Say["asbuilt.figure." + f.Kind.ToString().ToLowerInvariant()], Done(f))));
        if (built.Progress.Apart > 0) paper.Line($"  {Say.Count("asbuilt.apart", built.Progress.Apart)}");
        paper.Line("  " + (built.Posts.Count + built.Lost.Count == 0 ? "No post is set yet." : built.AsDrawn ? Say["asbuilt.same"] : "Not all stands as it was drawn."));
        if (built.Takeoff.Count > 0) paper.Line($"  That changes {PlanWords.Count(built.Takeoff.Count, "line")} of the take-off: 'tautline field as-built' prints them.");
    }

    private string Done(ProgressFigure figure)
    {
        string Show(double value) => figure.IsLength ? words.Words.Long(new Length(value)) : PlanWords.Number(value, "#,0");
        return Say.Say("asbuilt.done", ("done", Show(figure.Done)), ("of", Show(figure.Of)), ("percent", figure.Percent));
    }

    private void Differences(BuiltRecord built)
    {
        var differ = built.Differences.ToList();
        if (differ.Count + built.Lost.Count + built.LeftOut.Count == 0) return;
        paper.Heading(Say["asbuilt.differences"]);
        if (differ.Count > 0)
            paper.Table(
                ["post", ">drawn at", ">stands at", "along", "off", "", "set by", "when"],
                differ.Select(IReadOnlyList<string> (p) =>
                    [
                        p.Drawn is { } d ? PlanWords.Mark(p.Line, built.Drawn.Lines[p.Line].Posts[d]) : "-", p.Drawn is { } at ? words.Words.Station(built.Drawn.Lines[p.Line].Posts[at].Station) : "-",
                        words.Words.Station(p.Station), Say.Along(words.Words, p.Along), Say.Off(words.Words, p.Off), Marked(p), p.Entry.Person, words.Clock.Text(p.Entry.At),
                    ]));
        foreach (var lost in built.Lost) paper.Line($"  {Say.Say("asbuilt.lost", ("posts", Say.Say("asbuilt.lostPost", ("n", lost.Post.Number), ("when", words.Clock.Text(lost.Entry.At)))))}");
        if (built.LeftOut.Count > 0) paper.Line($"  {Say.Say("asbuilt.leftOut", ("posts", string.Join(", ", built.LeftOut.Select(p => PlanWords.Mark(p.Line, built.Drawn.Lines[p.Line].Posts[p.Post])))))}");
    }

    private string Marked(StandingPost post)
        => string.Join(", ", new[] { post.Drawn is null ? Say["asbuilt.notDrawn"] : "", post.OtherKind ? Say["asbuilt.otherKind"] : "", post.OutOfLine ? Say["asbuilt.over"] : "" }.Where(w => w.Length > 0));

    private void Changes()
    {
        var changes = state.Log.Standing.Where(e => e.Changed is not null).ToList();
        if (changes.Count == 0) return;
        paper.Heading("Changes agreed");
        paper.Table(
            ["what for", ">quantity", ">price", ">total", "signed", "written by", "when"],
            changes.Select(IReadOnlyList<string> (e) =>
                [
                    e.Text, $"{FieldWords.Number(e.Changed!.Quantity)} {e.Changed.Unit}", FieldWords.Money(e.Changed.UnitCents), FieldWords.Money(e.Changed.TotalCents), e.Changed.Signer, e.Person, words.Clock.Text(e.At),
                ]));
        paper.Line($"  {Say.Say("asbuilt.changes.sum", ("total", FieldWords.Money(changes.Sum(e => e.Changed!.TotalCents))))}");
    }

    private void Hours()
    {
        var hours = FieldHours.Of(state.Log);
        if (hours.Count == 0) return;
        paper.Heading("Hours");
        paper.Table(["person", "on", ">hours"], hours.Select(IReadOnlyList<string> (h) => [h.Person.Length > 0 ? h.Person : "not said", words.Work(h.Operation), FieldWords.Number(h.Hours)]));
        paper.Line($"  {FieldWords.Number(hours.Sum(h => h.Hours))} hours in all");
    }

    private void Checks()
    {
        var checks = state.Log.Standing.Where(e => e.Found is { Item: not Checked.SignOff }).ToList();
        if (state.Inspection is { } inspection && state.Log.Standing.Any(e => e.Kind is LogEntry.Check or LogEntry.Punch)) Stages(inspection);
        if (checks.Count == 0) return;
        paper.Heading("Readings");
        paper.Table(
            ["check", ">measured", "", "where", "words", "by", "when"],
            checks.Select(IReadOnlyList<string> (e) =>
                [words.Check(e.Found!.Item), words.Measured(e.Found), words.Verdict(e.Found), words.Place(e), e.Text, e.Person, words.Clock.Text(e.At)]));
    }

    private void Stages(Inspection inspection)
    {
        paper.Heading("Checks by stage: of every run and gate");
        paper.Table(
            ["stage", ">as it should be", ">not", ">to look at", "signed for"],
            inspection.Stages.Select(IReadOnlyList<string> (s) =>
                [Say["inspect.stage." + Inspection.Name(s.Stage)], $"{s.Passed}", $"{s.Failed}", $"{s.Open}", s.Signed is { } signed ? $"{signed.Found!.By}, {words.Clock.Text(signed.At)}" : "-"]));
        if (inspection.Astray.Count > 0) paper.Line($"  {Say.Count("inspect.astray", inspection.Astray.Count)}");
        if (inspection.Punch.Count == 0) return;
        paper.Heading($"{Say["inspect.punch"]}: {(inspection.Waiting > 0 ? Say.Count("inspect.punchWaits", inspection.Waiting) : Say["inspect.punchNone"])}");
        paper.Table(
            ["entry", "what", "where", "", "by", "when"],
            inspection.Punch.Select(IReadOnlyList<string> (p) =>
                [$"{p.Opened.Key}", p.Item is { } item ? words.Check(item.Key) : p.Opened.Text, words.Place(p.Opened), words.State(p.State), p.Last.Person, words.Clock.Text(p.Last.At)]));
    }

    private void Conflicts()
    {
        var conflicts = state.File.Exchange.Shared.Conflicts;
        if (conflicts.Count == 0) return;
        paper.Heading("Open conflicts: two people changed one thing, and nobody said yet which shall stand");
        paper.Table(
            ["what", "stands meanwhile", "could be"],
            conflicts.Select(IReadOnlyList<string> (c) => [words.What(c), words.Value(c, c.Stands), string.Join("; ", c.Others.Select(o => words.Value(c, o)))]));
        paper.Line("  They are settled on a phone or in the browser: Field, Hand over.");
    }

    private void Findings()
    {
        List<string> told =
        [
            .. state.Log.Findings.Select(f => $"{f.Entry}: {Found(f.Kind)}"),
            .. state.File.Exchange.Shared.NumbersTwice.Select(k => $"{k}: two different edits of the job carry this number, as after a restored backup; both are in the job: look it through."),
            .. (state.Plan?.Standing.Findings ?? []).Select(f => Say.Say("field.standing." + f.Kind.ToString().ToLowerInvariant(), ("post", f.Post.Number), ("off", words.Words.Short(f.Off)))),
            .. (state.Today?.Astray ?? []).Select(e => Say.Say("field.astray", ("work", words.Work(e.Done!.Operation)), ("place", words.Place(e)))),
        ];
        if (told.Count == 0) return;
        paper.Heading("To look at");
        paper.Labelled(told.Select(t => ("-", t)));
    }

    private static string Found(LogFindingKind kind) => kind switch
    {
        LogFindingKind.CorrectedTwice => "this entry was corrected twice; both corrections stand until one is taken back.",
        LogFindingKind.NumberTwice => "two different entries carry this number, as after a restored backup; both stand until one is taken back.",
        _ => "this entry is of a kind this program does not know; it is kept and handed on, and not counted here.",
    };

    private void Devices()
    {
        var devices = FieldDevice.Of(state.File.Exchange);
        if (devices.Count == 0) return;
        paper.Heading("Devices");
        paper.Table(
            ["device", "people", ">entries", ">edits", ">numbers", "last entry"],
            devices.Select(IReadOnlyList<string> (d) =>
                [d.Name, string.Join(", ", d.People), $"{d.Entries}", $"{d.Edits}", d.FirstNumber == d.LastNumber ? $"{d.FirstNumber}" : $"{d.FirstNumber} to {d.LastNumber}", d.Last is { } last ? words.Clock.Text(last) : "-"]));
    }

    private void Entries()
    {
        paper.Heading("Entries");
        paper.Table(
            ["when", "entry", "who", "kind", "", "what"],
            FieldEntry.Of(state.File.Exchange.Log, state.Log).Select(IReadOnlyList<string> (e) =>
                [words.Clock.Text(e.Entry.At), $"{e.Entry.Key}", e.Entry.Person, e.Entry.Kind, e.Stands ? "" : e.Entry.TakesBack ? "taken back" : "no longer", words.Told(e.Entry)]));
    }

    /// <summary>What has no table above.</summary>
    private void Others()
    {
        var others = state.Log.Standing.Where(e => e.Kind is LogEntry.Note or LogEntry.Photo or LogEntry.Material or LogEntry.Weather or LogEntry.Talk)
            .GroupBy(e => e.Kind).Select(g => $"{g.Key} {g.Count()}").ToList();
        paper.Line();
        paper.Line($"{(others.Count > 0 ? $"Also in the log: {string.Join(", ", others)}. " : "")}'--entries' lists every entry.");
    }

    private static string Entry(int count) => count == 1 ? "1 entry" : string.Create(CultureInfo.InvariantCulture, $"{count:#,0} entries");
}
