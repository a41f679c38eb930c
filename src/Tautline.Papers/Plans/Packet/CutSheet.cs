using Tautline.Documents.Scenes;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>A terminal: what slides on it and in which order, and the cut of each end of fabric there.</summary>
internal static class CutSheet
{
    /// <summary>Of the drawings, in points.</summary>
    private const double Tall = 262;

    /// <summary>Posts at which fabric ends.</summary>
    public static IEnumerable<int> Terminals(LinePlan line) => line.Runs.SelectMany(r => new[] { r.FromPost, r.ToPost }).Distinct().Order();

    public static PaperSheet Of(PacketDesk desk, int line, int post)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        string mark = desk.Mark(line, post);
        return desk.Sheet(say.Say.Say("paper.terminal", ("mark", mark), ("kind", say.Kind(planned.Posts[post].Kind))), $"terminal {mark}", line) with
        {
            Blocks = [.. Drawn(desk, line, post), .. Stack(desk, line, post), .. Ends(planned, post).SelectMany(e => Cut(desk, line, e.Run, e.End)), .. Notes(desk, line, post)],
            Cautions = say.Cautions(1),
        };
    }

    private static IEnumerable<(int Run, int End)> Ends(LinePlan line, int post)
    {
        foreach ((int i, RunPlan run) in line.Runs.Index())
        {
            if (run.FromPost == post) yield return (i, 0);
            if (run.ToPost == post) yield return (i, 1);
        }
    }

    /// <summary>The post and the cuts of its ends, side by side.</summary>
    private static IEnumerable<PaperBlock> Drawn(PacketDesk desk, int line, int post)
    {
        double room = Math.Min(desk.Choice.Format.RoomWidth, 640);
        List<(int Run, int End)> cuts = [.. Ends(desk.Plan.Lines[line], post).Where(e => Columns(desk, line, e) >= 2)];
        double[] shares = cuts.Count switch { 0 => [0.6], 1 => [0.52, 0.48], _ => [0.42, 0.29, 0.29] };
        List<Scene> scenes = [];
        List<string> captions = [];
        if (TerminalDrawing.Of(desk.Plan, line, post, room * shares[0], Tall, desk.Say.Words) is { } stack)
        {
            scenes.Add(stack);
            captions.Add(desk.Mark(line, post));
        }

        foreach ((int i, (int Run, int End) cut) in cuts.Take(2).Index())
            if (CutCardDrawing.Of(desk.Plan, line, cut.Run, cut.End, room * shares[i + 1], Tall, desk.Choice.Say) is { } scene)
            {
                scenes.Add(scene);
                RunPlan run = desk.Plan.Lines[line].Runs[cut.Run];
                captions.Add(desk.Say.Say.Say("paper.toward", ("mark", desk.Mark(line, cut.End == 0 ? run.ToPost : run.FromPost))));
            }

        if (scenes.Count > 0) yield return new PaperBlock.Drawing(SideBySide.Of(scenes, captions));
    }

    private static int Columns(PacketDesk desk, int line, (int Run, int End) at)
        => desk.Plan.Lines[line].Runs[at.Run] is var run && at.End == 0 ? run.Start.Columns : run.Finish.Columns;

    private static IEnumerable<PaperBlock> Stack(PacketDesk desk, int line, int post)
    {
        if (HangCards.Stack(desk.Plan, line, post) is not { } card) yield break;
        yield return new PaperBlock.Heading(desk.Say["paper.terminal.stack"]);
        foreach ((int i, StackItem item) in card.Items.Index()) yield return new PaperBlock.Words(desk.Say.Slide(item), Mark: $"{i + 1}.");
        foreach (StackMove move in card.Moves) yield return new PaperBlock.Words(desk.Say.Moved(move), true, "!");
    }

    /// <summary>What holds for all cuts here, said once.</summary>
    private static IEnumerable<PaperBlock> Notes(PacketDesk desk, int line, int post)
    {
        if (Ends(desk.Plan.Lines[line], post).Any(e => desk.Plan.Specs.First(s => s.Id == desk.Plan.Lines[line].Runs[e.Run].Spec).Widths > 1))
            yield return new PaperBlock.Words(desk.Say["paper.terminal.laced"], Mark: "•");
        foreach (string note in Ends(desk.Plan.Lines[line], post).SelectMany(e => desk.Say.CutNotes(HangCards.Cut(desk.Plan, line, e.Run, e.End).Cut)).Distinct())
            yield return new PaperBlock.Words(note, Mark: "•");
    }

    private static IEnumerable<PaperBlock> Cut(PacketDesk desk, int line, int run, int end)
    {
        (PaperSay say, RunPlan planned) = (desk.Say, desk.Plan.Lines[line].Runs[run]);
        (int here, int there) = end == 0 ? (planned.FromPost, planned.ToPost) : (planned.ToPost, planned.FromPost);
        yield return new PaperBlock.Heading(say.Say.Say("paper.cutAt", ("mark", desk.Mark(line, here)), ("toward", desk.Mark(line, there))));
        EndPlan at = end == 0 ? planned.Start : planned.Finish;
        if (at.Columns >= 2) yield return new PaperBlock.Words(here == planned.Hang.FirstTie ? say["paper.cut.ahead"] : say.Say.Say("paper.cut.readFirst", ("n", say.Range(at.ColumnsLow, at.ColumnsHigh))), true);
        foreach ((int i, string step) in say.Cut(HangCards.Cut(desk.Plan, line, run, end).Cut).Index()) yield return new PaperBlock.Words(step, Mark: $"{i + 1}.");
    }
}
