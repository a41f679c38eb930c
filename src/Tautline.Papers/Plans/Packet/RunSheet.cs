using Tautline.Documents.Scenes;
using Tautline.Engine.Fabric;
using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>One run on one sheet: on its front how the fabric is pulled, on its back the frame it hangs on.</summary>
internal static class RunSheet
{
    /// <summary>Longest stretch drawn in one strip: beyond it posts could not be told apart.</summary>
    private const double StripMetres = 75;

    private const int MostStrips = 4;

    public static PaperSheet Of(PacketDesk desk, int line, int index)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        RunPlan run = planned.Runs[index];
        string name = say.Say.Say("paper.run", ("n", run.Number), ("from", desk.Mark(line, run.FromPost)), ("to", desk.Mark(line, run.ToPost)));
        SpecPlan spec = desk.Plan.Specs.First(s => s.Id == run.Spec);
        return desk.Sheet(name, $"run {planned.Id}/{run.Number}", line) with
        {
            Head = [say.Line(planned), say.Made(spec, desk.Plan)],
            Blocks = [.. Front(desk, line, index, spec), new PaperBlock.NewPage(IfFirst: true), .. Back(desk, line, index)],
            Cautions = say.Cautions(1),
        };
    }

    private static IEnumerable<PaperBlock> Front(PacketDesk desk, int line, int index, SpecPlan spec)
    {
        (PaperSay say, RunPlan run) = (desk.Say, desk.Plan.Lines[line].Runs[index]);
        yield return new PaperBlock.Heading(say["paper.run.front"]);
        foreach (Scene strip in Strips(desk, line, index)) yield return new PaperBlock.Drawing(strip);
        yield return new PaperBlock.Facts(
            [
                (say["paper.run.fabric"], say.Words.Long(run.Fabric)), (say["paper.run.pickets"], say.Range(run.PicketsLow, run.PicketsHigh)),
                (say["paper.run.take"], say.Words.Long(run.RollTake)), (say["paper.run.tail"], say.Words.Short(run.Hang.Tail)),
                (say["paper.run.ends"], $"{desk.Mark(line, run.Hang.FirstTie)} → {desk.Mark(line, run.Hang.Pulls.Count > 0 ? run.Hang.Pulls[^1].To : run.ToPost)}"),
                (say["paper.run.bays"], say.Say.Say("paper.run.baysOf", ("n", run.Bays), ("largest", say.Words.Long(run.LargestBay)))),
            ],
            2);
        yield return new PaperBlock.Heading(say["paper.run.steps"]);
        foreach ((int i, string step) in Steps(desk, line, index).Index()) yield return new PaperBlock.Words(step, Mark: $"{i + 1}.");
        foreach (PaperBlock block in Rolls(desk, line, index)) yield return block;
        yield return new PaperTable(say["paper.run.fastened"], [new(say["paper.what"]), new(say["paper.count"], ColumnAlign.End), new(say["paper.where"])], [.. Fastened(desk, line, run, spec)]);
    }

    /// <summary>The run from its side, in strips of a length that a crew can read.</summary>
    private static IEnumerable<Scene> Strips(PacketDesk desk, int line, int index)
    {
        LinePlan planned = desk.Plan.Lines[line];
        RunPlan run = planned.Runs[index];
        ProfilePicture picture = ProfileStage.Of(desk.Plan, line, desk.Choice.Units);
        double from = planned.Posts[run.FromPost].Station.Metres, to = from + run.Level.Metres;
        double room = Math.Min(desk.Choice.Format.RoomWidth, 900);
        int strips = Math.Clamp((int)Math.Ceiling((to - from) / (StripMetres * room / 525)), 1, MostStrips);
        for (int i = 0; i < strips; i++)
        {
            double a = from + ((to - from) * i / strips), b = from + ((to - from) * (i + 1) / strips);
            yield return ProfileDrawing.Of(picture, new(a - 0.4, b + 0.4, room, strips == 1 ? 128 : 86, 0), say(desk), desk.Choice.Say);
        }

        static PlanWords say(PacketDesk desk) => desk.Say.Words;
    }

    private static IEnumerable<string> Steps(PacketDesk desk, int line, int index)
    {
        (PaperSay say, RunPlan run) = (desk.Say, desk.Plan.Lines[line].Runs[index]);
        RunHang hang = run.Hang;
        string Mark(int post) => desk.Mark(line, post);
        int last = hang.FirstTie == run.FromPost ? run.ToPost : run.FromPost;
        yield return say["paper.step.bands"];
        if (desk.Plan.Specs.First(s => s.Id == run.Spec).BottomWire) yield return say["paper.step.wire"];
        yield return say.Say.Say("paper.step.tie", ("mark", Mark(hang.FirstTie)), ("cut", Cut(say, run, hang.FirstTie == run.FromPost, true)));
        yield return say.Say.Say("paper.step.method", ("method", say.Method(hang)));
        foreach ((int i, PullPlan pull) in hang.Pulls.Index())
            yield return i < hang.Pulls.Count - 1
                ? say.Say.Say("paper.step.pull", ("mark", Mark(pull.To)), ("length", say.Words.Long(pull.Fabric)))
                : say.Say.Say("paper.step.lastPull", ("mark", Mark(pull.To)), ("length", say.Words.Long(pull.Fabric)));
        if (hang.Anchor is { } anchor) yield return say.Say.Say("paper.step.anchor", ("mark", Mark(anchor)));
        Seat seat = HangCards.Seat(desk.Plan, line, index);
        yield return say.Say.Say(seat.On == SeatOn.Rail ? "paper.step.seatRail" : "paper.step.seatWire", ("over", say.Range(seat.TopOver)), ("gap", say.Range(seat.Gap)));
        yield return say.Say.Say("paper.step.far", ("mark", Mark(last)), ("cut", Cut(say, run, last == run.FromPost, false)));
        yield return say["paper.step.tieLine"];
    }

    /// <summary>How an end is cut: the first ahead, the far one from two readings.</summary>
    private static string Cut(PaperSay say, RunPlan run, bool start, bool first)
    {
        EndPlan end = start ? run.Start : run.Finish;
        string pickets = say.Range(end.ColumnsLow, end.ColumnsHigh);
        return end.Columns < 2 ? say["paper.step.square"] : say.Say.Say(first ? "paper.step.cutAhead" : "paper.step.cutRead", ("n", pickets));
    }

    private static IEnumerable<PaperBlock> Rolls(PacketDesk desk, int line, int index)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        IReadOnlyList<PullFeed> feeds = RollFeeds.Of(desk.Plan, planned, planned.Runs[index]);
        if (desk.Plan.Rolls is not { } rolls || feeds.Count == 0) yield break;
        List<IReadOnlyList<string>> rows = [];
        foreach ((int width, PullFeed feed) in feeds.Index())
            foreach ((int i, FabricPiece piece) in feed.Pieces.Index())
            {
                RollUse roll = rolls.Rolls[piece.Roll];
                FabricSplice? splice = feed.Splices.FirstOrDefault(s => s.Left == i);
                rows.Add([
                    feeds.Count > 1 ? $"{width + 1}" : $"{piece.Roll + 1}", roll.Id.Stock + (roll.Lot.Length > 0 ? $", {roll.Lot}" : "") + (roll.Missing ? " " + say["rolls.missing"] : roll.Certain ? "" : " " + say["rolls.perhaps"]),
                    say.Range(piece.Pickets.Low, piece.Pickets.High), say.Turn(piece.Turn),
                    splice is null ? "" : say.Range(splice.Station, say.Words.Station), splice is null ? "" : say.Match(splice),
                ]);
            }

        yield return new PaperTable(
            say["paper.run.rolls"],
            [new(say[feeds.Count > 1 ? "paper.run.width" : "paper.run.roll"], ColumnAlign.End), new(say["rolls.stock"]), new(say["paper.run.pickets"], ColumnAlign.End), new(say["paper.run.turn"]), new(say["paper.run.spliceAt"], ColumnAlign.End), new(say["paper.run.splice"])],
            rows);
    }

    private static IEnumerable<IReadOnlyList<string>> Fastened(PacketDesk desk, int line, RunPlan run, SpecPlan spec)
    {
        PaperSay say = desk.Say;
        foreach ((EndPlan end, int post) in new[] { (run.Start, run.FromPost), (run.Finish, run.ToPost) })
        {
            yield return [say.Say.Say("paper.run.bandsAt", ("mark", desk.Mark(line, post))), PaperSay.Number(end.Bands), say.Say.Say("paper.run.bandsOn", ("where", say.Positions(end.BandsAt)), ("bar", say.Words.Short(end.Bar)))];
        }

        if (run.Bays > 1) yield return [say["paper.run.postTies"], say.Say.Say("paper.run.each", ("n", spec.Ties.Count)), say.Positions(spec.Ties)];
        if (run.RailTies > 0) yield return [say["paper.run.railTies"], PaperSay.Number(run.RailTies), say.Say.Say("paper.run.every", ("n", spec.TieEvery), ("space", say.Words.Short(spec.TieSpace)))];
        if (run.Rings > 0) yield return [say["paper.run.rings"], PaperSay.Number(run.Rings), say.Say.Say("paper.run.every", ("n", spec.RingEvery), ("space", say.Words.Short(spec.RingSpace)))];
        if (run.Seam > 0) yield return [say["paper.run.seam"], PaperSay.Number(run.Seam), ""];
        if (run.ScreenTies > 0) yield return [say["paper.run.screenTies"], PaperSay.Number(run.ScreenTies), ""];
        if (run.ConcertinaTies > 0) yield return [say["paper.run.concertinaTies"], PaperSay.Number(run.ConcertinaTies), ""];
    }

    private static IEnumerable<PaperBlock> Back(PacketDesk desk, int line, int index)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        RunPlan run = planned.Runs[index];
        yield return new PaperBlock.Heading(say["paper.run.back"]);
        List<(string, string)> facts = [];
        if (run.Rail.Metres > 0) facts.Add((say["paper.frame.rail"], say.Say.Say("paper.frame.railOf", ("length", say.Words.Long(run.Rail)), ("n", run.RailPieces), ("sleeves", run.Sleeves))));
        if (run.Wire.Metres > 0) facts.Add((say["paper.frame.wire"], say.Words.Long(run.Wire)));
        foreach ((EndPlan end, int post) in new[] { (run.Start, run.FromPost), (run.Finish, run.ToPost) })
            if (end.BraceRail.Metres > 0) facts.Add((say.Say.Say("paper.frame.brace", ("mark", desk.Mark(line, post))), say.Words.Long(end.BraceRail)));
        if (run.Strand.Metres > 0) facts.Add((say["paper.frame.strand"], say.Words.Long(run.Strand)));
        if (run.BayPieces.Count > 0) facts.Add((say["paper.frame.pieces"], Pieces(say, run.BayPieces)));
        yield return new PaperBlock.Facts(facts, 1);
        yield return new PaperBlock.Lines([say["paper.sign.crew"], say["paper.sign.date"]]);
        yield return new PaperTable(
            say["paper.frame.posts"],
            [
                new(say["paper.post"]), new(say["paper.kind"]), new(say["paper.tape"], ColumnAlign.End), new(say["paper.section"]), new(say["paper.hole"], ColumnAlign.End),
                new(say["paper.above"], ColumnAlign.End), new(say["paper.cut"], ColumnAlign.End), new(say["paper.done"], ColumnAlign.Tick),
            ],
            [.. Alike(desk, line, run)]);
        if (planned.Grading.Where(g => g.To >= planned.Posts[run.FromPost].Station && g.From <= planned.Posts[run.FromPost].Station + run.Level).ToList() is { Count: > 0 } grading)
            yield return new PaperTable(
                say["paper.grading"], [new(say["paper.from"], ColumnAlign.End), new(say["paper.until"], ColumnAlign.End), new(say["paper.what"]), new(say["paper.depth"], ColumnAlign.End), new(say["paper.volume"], ColumnAlign.End)],
                [.. grading.Select(g => (IReadOnlyList<string>)[say.Words.Station(g.From), say.Words.Station(g.To), say[g.TooHigh ? "paper.tooHigh" : "paper.tooLow"] + Remedy(say, g), say.Words.Short(g.Depth), say.Volume(g.Volume)])]);
    }

    private static string Remedy(PaperSay say, GradingPlan grading) => ": " + say[grading.Remedy switch
    {
        Engine.Layout.Fit.Remedies.Grading => grading.TooHigh ? "paper.remedy.cut" : "paper.remedy.fill",
        Engine.Layout.Fit.Remedies.TrimOrBury => "paper.remedy.trim",
        Engine.Layout.Fit.Remedies.ClosurePiece => "paper.remedy.close",
        _ => "paper.remedy.none",
    }];

    /// <summary>Equal pieces side by side that follow each other are told once.</summary>
    private static string Pieces(PaperSay say, IReadOnlyList<Length> pieces)
        => string.Join(", ", pieces.GroupBy(p => say.Words.Long(p)).Select(g => $"{g.Count()} × {g.Key}"));

    private static IEnumerable<int> Posts(LinePlan line, RunPlan run)
    {
        for (int i = 0; i <= run.Bays; i++) yield return (run.FromPost + i) % line.Posts.Count;
    }

    /// <summary>A row for each post, or for several alike that follow one another: from which to which.</summary>
    private static IEnumerable<IReadOnlyList<string>> Alike(PacketDesk desk, int line, RunPlan run)
    {
        List<IReadOnlyList<string>> same = [];
        foreach (IReadOnlyList<string> row in Posts(desk.Plan.Lines[line], run).Select(p => Post(desk, line, p)))
        {
            if (same.Count > 0 && !same[0].Where((_, i) => i is not 0 and not 2).SequenceEqual(row.Where((_, i) => i is not 0 and not 2)))
            {
                yield return Together(desk.Say, same);
                same = [];
            }

            same.Add(row);
        }

        yield return Together(desk.Say, same);
    }

    private static IReadOnlyList<string> Together(PaperSay say, List<IReadOnlyList<string>> same) => same.Count == 1
        ? same[0]
        : [$"{same[0][0]} {say["paper.to"]} {same[^1][0]}", $"{same.Count} × {same[0][1]}", $"{same[0][2]} {say["paper.to"]} {same[^1][2]}", .. same[0].Skip(3)];

    private static IReadOnlyList<string> Post(PacketDesk desk, int line, int index)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        PostPlan post = planned.Posts[index];
        return [desk.Mark(line, index), say.ShortKind(post.Kind), say.Words.Station(post.Station), post.Section, say.Held(post), say.Words.Short(post.AboveGround), post.Support == Support.Standing ? "" : say.Words.Long(post.CutLength), ""];
    }
}
