using System.Globalization;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Comparison;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Log;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Built;

/// <summary>What stands, for the file: the drawing on a page of its own; then what differs, how far the work is, the material, the changes that were agreed, and room to sign.</summary>
public static class AsBuiltPaper
{
    /// <summary>Height the box of cautions takes from the drawing, in points.</summary>
    private const double CautionRoom = 22;

    /// <param name="when">A device's clock, milliseconds since 1970, in words: whose time zone is for who calls to say.</param>
    /// <exception cref="ArgumentException">A plan has errors: its posts are not known.</exception>
    public static PaperDocument Of(BuiltRecord record, LogState log, PaperChoice choice, Func<long, string> when)
    {
        if (record.Drawn.HasErrors || record.Now.HasErrors) throw new ArgumentException("A plan with errors has no as-built.", nameof(record));
        var desk = new Desk(record, new PaperSay(choice), when);
        string by = log.Standing.Count == 0 ? desk.Say["asbuilt.nothing"]
            : desk.Say.Say.Say("asbuilt.by", ("n", PaperSay.Number(log.Standing.Count)), ("when", when(log.Standing.Max(e => e.At))));
        return new(choice.Say.Say("asbuilt.title", ("job", PaperSay.Job(record.Now))))
        {
            Words = choice.Words,
            Format = choice.Format,
            Footer = choice.Say.Say("paper.footer", ("hash", PlanFile.Hash(record.Now)[..16])),
            Sheets = [Drawn(desk, choice, by), Told(desk, by)],
        };
    }

    private sealed record Desk(BuiltRecord Record, PaperSay Say, Func<long, string> When)
    {
        public PlanWords Words => Say.Words;

        public string Mark(PostAt post) => PlanWords.Mark(post.Line, Record.Drawn.Lines[post.Line].Posts[post.Post]);
    }

    private static PaperSheet Drawn(Desk desk, PaperChoice choice, string by)
    {
        IReadOnlyList<double> extent = PictureStage.Of(desk.Record.Now, choice.Units).Extent;
        var format = new PaperFormat(choice.Format.Size, extent[2] - extent[0] > extent[3] - extent[1]);
        Scene? scene = AsBuiltDrawing.Of(desk.Record, format.RoomWidth, format.RoomHeight - CautionRoom, desk.Words, choice.Say);
        return new(desk.Say["asbuilt"]) { Format = format, Head = [by], Blocks = scene is null ? [] : [new PaperBlock.Drawing(scene)], Cautions = [desk.Say["asbuilt.record"]] };
    }

    private static PaperSheet Told(Desk desk, string by) => new(desk.Say["asbuilt.figures"])
    {
        Head = [by],
        Blocks = [.. Figures(desk), .. Differences(desk), ByRun(desk), ByStation(desk), .. Takeoff(desk), .. Changes(desk), new PaperBlock.Lines([desk.Say["paper.sign.crew"], desk.Say["paper.sign.inspector"], desk.Say["paper.sign.date"]])],
        Cautions = [desk.Say["asbuilt.record"]],
    };

    private static IEnumerable<PaperBlock> Figures(Desk desk)
    {
        yield return new PaperBlock.Facts([.. desk.Record.Progress.Figures.Select(f => (desk.Say["asbuilt.figure." + f.Kind.ToString().ToLowerInvariant()], Done(desk, f)))], 2);
        yield return new PaperBlock.Words(desk.Say["asbuilt.noWhole"]);
        if (desk.Record.Progress.Apart > 0) yield return new PaperBlock.Words(desk.Say.Say.Count("asbuilt.apart", desk.Record.Progress.Apart));
    }

    private static string Done(Desk desk, ProgressFigure figure)
    {
        string Show(double value) => figure.IsLength ? desk.Words.Long(new Length(value)) : PaperSay.Number(value);
        return desk.Say.Say.Say("asbuilt.done", ("done", Show(figure.Done)), ("of", Show(figure.Of)), ("percent", figure.Percent));
    }

    private static IEnumerable<PaperBlock> Differences(Desk desk)
    {
        (BuiltRecord record, PaperSay say) = (desk.Record, desk.Say);
        List<StandingPost> differ = [.. record.Differences];
        if (differ.Count > 0)
        {
            yield return new PaperTable(
                say["asbuilt.differences"],
                [
                    new(say["paper.post"]), new(say["asbuilt.drawnAt"], ColumnAlign.End), new(say["asbuilt.standsAt"], ColumnAlign.End), new(say["asbuilt.along"], ColumnAlign.End), new(say["asbuilt.off"], ColumnAlign.End),
                    new(""), new(say["asbuilt.who"]), new(say["asbuilt.when"]),
                ],
                [.. differ.Select(p => Row(desk, p))]);
            yield return new PaperBlock.Words(say.Say.Say("asbuilt.limit", ("limit", say.Words.Short(Standing.OutOfLine))));
        }
        else if (record.Posts.Count > 0 && record.Lost.Count == 0) yield return new PaperBlock.Words(say["asbuilt.same"], Strong: true);

        if (record.Lost.Count > 0)
            yield return new PaperBlock.Words(say.Say.Say("asbuilt.lost", ("posts", string.Join(", ", record.Lost.Select(p => say.Say.Say("asbuilt.lostPost", ("n", p.Post.Number), ("when", desk.When(p.Entry.At))))))));
        if (record.LeftOut.Count > 0) yield return new PaperBlock.Words(say.Say.Say("asbuilt.leftOut", ("posts", Named(desk, record.LeftOut))));
        if (record.ToBuild.Count > 0) yield return new PaperBlock.Words(say.Say.Say("asbuilt.toBuild", ("posts", Named(desk, record.ToBuild))));
    }

    /// <summary>Posts that follow one another as from and to.</summary>
    private static string Named(Desk desk, IReadOnlyList<PostAt> posts)
    {
        List<string> named = [];
        for (int i = 0, from = 0; i < posts.Count; i++)
        {
            if (i + 1 < posts.Count && posts[i + 1] == posts[i] with { Post = posts[i].Post + 1 }) continue;
            named.Add(i == from ? desk.Mark(posts[i]) : $"{desk.Mark(posts[from])}{(i == from + 1 ? ", " : " – ")}{desk.Mark(posts[i])}");
            from = i + 1;
        }

        return string.Join(", ", named);
    }

    private static IReadOnlyList<string> Row(Desk desk, StandingPost post)
    {
        PostPlan? drawn = post.Drawn is { } index ? desk.Record.Drawn.Lines[post.Line].Posts[index] : null;
        List<string> told = [];
        if (drawn is null) told.Add(desk.Say["asbuilt.notDrawn"]);
        if (post.OtherKind) told.Add(desk.Say["asbuilt.otherKind"]);
        if (post.OutOfLine) told.Add(desk.Say["asbuilt.over"]);
        return
        [
            drawn is null ? "–" : PlanWords.Mark(post.Line, drawn), drawn is null ? "–" : desk.Words.Station(drawn.Station), desk.Words.Station(post.Station), OrNone(desk.Say.Say.Along(desk.Words, post.Along)),
            OrNone(desk.Say.Say.Off(desk.Words, post.Off)), string.Join(", ", told), post.Entry.Person, desk.When(post.Entry.At),
        ];
    }

    private static string OrNone(string words) => words.Length > 0 ? words : "–";

    private static PaperTable ByRun(Desk desk)
    {
        PaperSay say = desk.Say;
        string[] operations = [.. Operations.All.Where(o => o != Operations.Gate)];
        return new(
            say["asbuilt.byRun"], [new(say["asbuilt.run"]), new(say["asbuilt.stations"]), .. operations.Select(o => new PaperColumn(say["field.op." + o], ColumnAlign.End))],
            [.. desk.Record.Progress.Runs.Select(r => (IReadOnlyList<string>)[Run(desk, r), Stations(desk, new(r.From, r.To)), .. operations.Select(o => Share(r.Operations.First(d => d.Operation == o)))])]);
    }

    /// <summary>Without its posts: those of the drawing are numbered otherwise once there are more of them.</summary>
    private static string Run(Desk desk, RunProgress run)
    {
        LinePlan line = desk.Record.Now.Lines[run.Line];
        return desk.Say.Say.Say("asbuilt.runName", ("line", line.Name.Length > 0 ? line.Name : line.Id.Value), ("n", line.Runs[run.Run].Number));
    }

    /// <summary>Posts of posts; a run as a whole is done or not.</summary>
    private static string Share(OperationProgress done)
        => Operations.OfPosts(done.Operation) ? string.Create(CultureInfo.InvariantCulture, $"{done.Done}/{done.Of}") : done.Percent == 100 ? "100 %" : "–";

    private static PaperTable ByStation(Desk desk) => new(
        desk.Say["asbuilt.byStation"], [new(desk.Say["paper.what"]), new(desk.Say["asbuilt.stations"])],
        [.. desk.Record.Progress.Stations.Where(s => s.Stretches.Count > 0).Select(s => (IReadOnlyList<string>)[$"{desk.Say.Line(desk.Record.Now.Lines[s.Line])}: {desk.Say["field.op." + s.Operation]}", string.Join("; ", s.Stretches.Select(d => Stations(desk, d)))])]);

    private static string Stations(Desk desk, DoneStretch stretch) => stretch.From == stretch.To
        ? desk.Words.Station(stretch.From) : desk.Say.Say.Say("asbuilt.fromTo", ("from", desk.Words.Station(stretch.From)), ("to", desk.Words.Station(stretch.To)));

    private static IEnumerable<PaperBlock> Takeoff(Desk desk)
    {
        if (desk.Record.Takeoff.Count == 0) yield break;
        PaperSay say = desk.Say;
        yield return new PaperTable(
            say["asbuilt.takeoff"], [new(say["paper.part"]), new(say["paper.size"]), new(say["field.asDrawn"], ColumnAlign.End), new(say["field.now"], ColumnAlign.End)],
            [.. desk.Record.Takeoff.Select(d => Row(say, d))]);
    }

    private static IReadOnlyList<string> Row(PaperSay say, TakeoffDifference change)
        => [say.Part(change.Item.Part, change.Item.Name), say.Size(change.Item), change.A is null ? "–" : say.Net(change.A), change.B is null ? "–" : say.Net(change.B)];

    private static IEnumerable<PaperBlock> Changes(Desk desk)
    {
        (BuiltRecord record, PaperSay say) = (desk.Record, desk.Say);
        if (record.Changes.Count == 0) yield break;
        yield return new PaperTable(
            say["asbuilt.changes"],
            [
                new(say["asbuilt.changes.words"]), new(say["asbuilt.changes.place"]), new(say["asbuilt.changes.quantity"], ColumnAlign.End), new(say["asbuilt.changes.price"], ColumnAlign.End),
                new(say["asbuilt.changes.total"], ColumnAlign.End), new(say["asbuilt.changes.signer"]), new(say["asbuilt.changes.by"]), new(say["asbuilt.when"]),
            ],
            [.. record.Changes.Select(c => Row(desk, c))]);
        yield return new PaperBlock.Words(say.Say.Say("asbuilt.changes.sum", ("total", Money(record.ChangedCents))), Strong: true);
    }

    private static IReadOnlyList<string> Row(Desk desk, AgreedChange agreed)
    {
        (LogEntry entry, ChangeOrder change) = (agreed.Entry, agreed.Entry.Changed!);
        return
        [
            entry.Text, Place(desk, agreed), $"{change.Quantity.ToString("#,0.####", CultureInfo.InvariantCulture)} {change.Unit}", Money(change.UnitCents), Money(change.TotalCents), change.Signer, entry.Person,
            desk.When(entry.At),
        ];
    }

    /// <summary>By its name then and its station now; of a leg that is gone by its name alone.</summary>
    private static string Place(Desk desk, AgreedChange change)
        => $"{change.Entry.Place?.Called} {(change.Station is { } station ? desk.Words.Station(station) : "")}".Trim() is { Length: > 0 } place ? place : "–";

    /// <summary>Cents as whole money, without a sign: the job names no currency.</summary>
    private static string Money(long cents) => (cents / 100m).ToString("#,0.00", CultureInfo.InvariantCulture);
}
