using Tautline.Documents.Words;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Documents.Scenes;

/// <summary>
/// A line from its side: ground, posts with their holes, rail and fabric, gates, ground to cut or fill, pulls, splices and drops. What cannot be told apart
/// at the scale of the drawing is thinned, and texts that would lie over each other are left out.
/// </summary>
public sealed class ProfileDrawing
{
    /// <summary>Bays narrower than this on the drawing are one band of fabric.</summary>
    private const double LeastBay = 2.5;

    private const double LeastPost = 3;

    private readonly ProfilePicture picture;
    private readonly ProfileSight sight;
    private readonly PlanWords words;
    private readonly Phrases say;
    private readonly ProfileFrame frame;
    private readonly LabelBoard labels;
    private readonly List<SceneItem> items = [];

    private ProfileDrawing(ProfilePicture picture, ProfileSight sight, PlanWords words, Phrases say)
    {
        (this.picture, this.sight, this.words, this.say) = (picture, sight, words, say);
        frame = ProfileFrame.Of(picture, sight);
        labels = new LabelBoard(sight.Width, sight.Height);
    }

    public static Scene Of(ProfilePicture picture, ProfileSight sight, PlanWords words, Phrases say)
    {
        var drawing = new ProfileDrawing(picture, sight, words, say);
        drawing.Draw();
        return new(sight.Width, sight.Height, drawing.items, drawing.frame.UnitsPerMetre, drawing.frame.Exaggeration);
    }

    /// <summary>The station at a place of the drawing, metres.</summary>
    public static double StationAt(ProfilePicture picture, ProfileSight sight, double x) => ProfileFrame.Of(picture, sight).Station(x);

    private void Draw()
    {
        ProfileAxes.Draw(frame, sight, words, labels, items);
        Earth();
        foreach (ProfileMark drop in picture.Drops.Where(s => Shows(s.From, s.To))) Keep(drop);
        foreach (ProfileGate gate in picture.Gates.Where(g => Shows(g.From, g.To))) labels.Keep(frame.X(gate.From), frame.Y(gate.Top), frame.X(gate.To), frame.Y(gate.Base));
        if (sight.ForScreen) Targets();
        Fabric();
        foreach (ProfileStretch stretch in picture.Grading.Where(s => Shows(s.From, s.To))) Grading(stretch);
        foreach (ProfileGate gate in picture.Gates.Where(g => Shows(g.From, g.To))) Gate(gate);
        Posts();
        foreach (ProfilePull pull in picture.Pulls) Pull(pull);
        foreach (ProfileMark splice in picture.Splices.Where(s => Shows(s.From, s.To))) Splice(splice);
        foreach (ProfileMark drop in picture.Drops.Where(s => Shows(s.From, s.To))) Drop(drop);
        foreach (ProfileProblem problem in picture.Problems.Where(p => p.Severity > Severity.Note && Shows(p.Station, p.Station))) Problem(problem);
    }

    private bool Shows(double from, double to) => to >= frame.From && from <= frame.To;

    private double Ground(double station) => ProfileStage.HeightAt(picture.Ground.Span, station);

    private void Earth()
    {
        List<double> line = GroundBetween(Math.Max(0, frame.From), Math.Min(picture.Length, frame.To));
        if (line.Count < 4) return;
        double under = frame.Bottom;
        items.Add(new SceneItem.Path(SceneRole.Earth, [.. line, line[^2], under, line[0], under], true));
        foreach (ProfilePost post in picture.Posts.Where(p => Shows(p.Station, p.Station))) Hole(post);
        items.Add(new SceneItem.Path(SceneRole.Ground, line));
    }

    /// <summary>The ground as it is drawn: of many corners in one column of the drawing the first, lowest, highest and last.</summary>
    private List<double> GroundBetween(double from, double to)
    {
        if (to <= from) return [];
        List<double> line = [frame.X(from), frame.Y(Ground(from))];
        ReadOnlySpan<double> all = picture.Ground.Span;
        for (int i = 0; i < all.Length; i += 2)
            if (all[i] > from && all[i] < to) Thinned.Add(line, frame.X(all[i]), frame.Y(all[i + 1]));
        line.AddRange([frame.X(to), frame.Y(Ground(to))]);
        return line;
    }

    private double PostSpace => picture.Posts.Count > 1 ? frame.UnitsPerMetre * picture.Length / picture.Posts.Count : double.MaxValue;

    private void Hole(ProfilePost post)
    {
        if (post.Bottom >= post.Ground || (PostSpace < 8 && post.Kind == PostKind.Line)) return;
        double half = Math.Max(0.8, post.Hole / 2 * frame.UnitsPerMetre);
        (double x, double top, double bottom) = (frame.X(post.Station), frame.Y(post.Ground), frame.Y(post.Bottom));
        items.Add(new SceneItem.Path(SceneRole.Hole, [x - half, top, x - half, bottom, x + half, bottom, x + half, top], true, $"post {post.Index}"));
    }

    private void Fabric()
    {
        List<double> tops = [], bottoms = [];
        int run = -1;
        double lastTo = double.NaN;
        foreach (ProfileBay bay in picture.Bays.Where(b => Shows(b.From, b.To)).Select(Cut))
        {
            bool goesOn = bay.Run == run && Math.Abs(bay.From - lastTo) < 1e-6 && tops.Count > 0 && Math.Abs(frame.Y(bay.Top) - tops[^1]) < 0.3 && Math.Abs(frame.Y(bay.Top - bay.Plumb) - bottoms[^1]) < 0.3;
            if (!goesOn) Band(tops, bottoms, run);
            (run, lastTo) = (bay.Run, bay.To);
            double from = frame.X(bay.From);
            if (tops.Count == 0) Corner(tops, bottoms, from, frame.Y(bay.Top), frame.Y(bay.Top - bay.Plumb));
            double to = frame.X(bay.To);
            if (to - tops[^2] >= LeastBay || bay.To >= frame.To - 1e-9 || bay.Post == picture.Bays[^1].Post) Corner(tops, bottoms, to, frame.Y(bay.TopTo), frame.Y(bay.TopTo - bay.Plumb));
        }

        Band(tops, bottoms, run);
    }

    /// <summary>The part of a bay that the drawing shows.</summary>
    private ProfileBay Cut(ProfileBay bay)
    {
        (double from, double to) = (Math.Max(bay.From, frame.From), Math.Min(bay.To, frame.To));
        double At(double station) => bay.Top + ((bay.TopTo - bay.Top) * (station - bay.From) / (bay.To - bay.From));
        return bay with { From = from, To = to, Top = At(from), TopTo = At(to) };
    }

    private static void Corner(List<double> tops, List<double> bottoms, double x, double top, double bottom)
    {
        tops.AddRange([x, top]);
        bottoms.AddRange([x, bottom]);
    }

    private void Band(List<double> tops, List<double> bottoms, int run)
    {
        if (tops.Count >= 4)
        {
            List<double> around = [.. tops];
            for (int i = bottoms.Count - 2; i >= 0; i -= 2) around.AddRange([bottoms[i], bottoms[i + 1]]);
            items.Add(new SceneItem.Path(SceneRole.Fabric, around, true, $"run {run}"));
            items.Add(new SceneItem.Path(SceneRole.FabricEdge, [.. bottoms]));
            items.Add(new SceneItem.Path(SceneRole.Rail, [.. tops]));
        }

        tops.Clear();
        bottoms.Clear();
    }

    private void Grading(ProfileStretch stretch)
    {
        (double from, double to) = (Math.Max(stretch.From, frame.From), Math.Min(stretch.To, frame.To));
        List<double> ground = GroundBetween(from, to);
        List<double> edge = [];
        foreach (ProfileBay bay in picture.Bays.Where(b => b.To > from && b.From < to)) edge.AddRange([.. Bottom(bay, Math.Max(from, bay.From)), .. Bottom(bay, Math.Min(to, bay.To))]);
        if (edge.Count < 4) return;
        for (int i = edge.Count - 2; i >= 0; i -= 2) ground.AddRange([edge[i], edge[i + 1]]);
        items.Add(new SceneItem.Path(stretch.TooHigh ? SceneRole.Cut : SceneRole.Fill, ground, true, $"grading {stretch.Index}"));
        Put(labels.Place(SceneRole.Note, frame.X((from + to) / 2), frame.Y(Ground((from + to) / 2)) + (sight.Type * 4), stretch.Words, sight.Type * 0.9, tag: $"grading {stretch.Index}"));
    }

    private double[] Bottom(ProfileBay bay, double station)
    {
        double top = bay.Top + ((bay.TopTo - bay.Top) * (station - bay.From) / (bay.To - bay.From));
        return [frame.X(station), frame.Y(top - bay.Plumb)];
    }

    private void Gate(ProfileGate gate)
    {
        (double left, double right, double top, double bottom) = (Math.Max(frame.Left, frame.X(gate.From)), Math.Min(frame.Right, frame.X(gate.To)), frame.Y(gate.Top), frame.Y(gate.Base));
        if (right - left < 1) return;
        string tag = $"gate {gate.Index}";
        items.Add(new SceneItem.Path(SceneRole.Gate, [left, top, right, top, right, bottom, left, bottom], true, tag));
        items.Add(new SceneItem.Path(SceneRole.FabricEdge, [left, bottom, right, top], false, tag));
        string kind = gate.Kind.ToString().ToLowerInvariant();
        string named = $"{say.Or("gate." + kind, kind)} {gate.Opening}";
        Put(labels.Place(SceneRole.Strong, (left + right) / 2, top - (sight.Type * 0.6), named, sight.Type, tag: tag));
    }

    private void Posts()
    {
        double last = double.MinValue;
        foreach (ProfilePost post in picture.Posts.Where(p => Shows(p.Station, p.Station)).OrderBy(p => p.Kind == PostKind.Line).ThenBy(p => p.Station)) Post(post, ref last);
    }

    private void Post(ProfilePost post, ref double last)
    {
        (double x, double top, double ground) = (frame.X(post.Station), frame.Y(post.Top), frame.Y(post.Ground));
        string tag = $"post {post.Index}";
        if (post.Kind == PostKind.Line)
        {
            if (x - last < LeastPost && x >= last) return;
            last = x;
            items.Add(new SceneItem.Path(SceneRole.Post, [x, ground, x, top], false, tag));
        }
        else
        {
            items.Add(new SceneItem.Path(SceneRole.Terminal, [x, ground, x, top], false, tag));
            items.Add(post.Kind == PostKind.Gate
                ? new SceneItem.Circle(SceneRole.PostTop, x, top, 2.4, tag)
                : new SceneItem.Path(SceneRole.PostTop, [x - 2.3, top - 2.3, x + 2.3, top - 2.3, x + 2.3, top + 2.3, x - 2.3, top + 2.3], true, tag));
        }

        Put(labels.Place(post.Kind == PostKind.Line ? SceneRole.Label : SceneRole.Strong, x, top - (sight.Type * 0.6), PlanWords.Mark(picture.Index, post.Index + 1), sight.Type * 0.9, tag: tag));
    }

    /// <summary>A bracket over the stretch, its arrow the way it is pulled.</summary>
    private void Pull(ProfilePull pull)
    {
        if (!Shows(Math.Min(pull.From, pull.To), Math.Max(pull.From, pull.To))) return;
        double y = frame.Top - (sight.Type * 2.2);
        (double from, double to) = (Math.Clamp(frame.X(pull.From), frame.Left, frame.Right), Math.Clamp(frame.X(pull.To), frame.Left, frame.Right));
        double way = Math.Sign(pull.To - pull.From);
        if (Math.Abs(to - from) < 6) return;
        string tag = $"run {pull.Run}";
        items.Add(new SceneItem.Path(SceneRole.Dimension, [from + way, y - 3, from + way, y + 3], false, tag));
        items.Add(new SceneItem.Path(SceneRole.Dimension, [from + way, y, to - (4 * way), y], false, tag));
        items.Add(new SceneItem.Path(SceneRole.Pull, [to - way, y, to - (5 * way), y - 2.2, to - (5 * way), y + 2.2], true, tag));
        Put(labels.Place(SceneRole.Label, (from + to) / 2, y - 2.5, say.Say("profile.pull", ("run", pull.Run + 1), ("n", pull.Order)), sight.Type * 0.85, tag: tag));
    }

    private void Splice(ProfileMark splice)
    {
        double x = frame.X((splice.From + splice.To) / 2);
        if (TopAt(splice) is not (double top, double bottom)) return;
        double wide = Math.Max(2, (splice.To - splice.From) / 2 * frame.UnitsPerMetre);
        items.Add(new SceneItem.Path(SceneRole.Splice, [x - wide, top, x + wide, top, x - wide, bottom, x + wide, bottom], true, $"run {splice.Run}"));
    }

    private (double Top, double Bottom)? TopAt(ProfileMark mark)
    {
        double station = (mark.From + mark.To) / 2;
        foreach (ProfileBay bay in picture.Bays)
            if (bay.Run == mark.Run && bay.From <= station && bay.To >= station && Bottom(bay, station) is [_, var bottom])
                return (bottom - (bay.Plumb * frame.UnitsPerMetre * frame.Exaggeration), bottom);
        return null;
    }

    private void Keep(ProfileMark drop)
    {
        double station = (drop.From + drop.To) / 2;
        (double x, double y) = (frame.X(station), frame.Y(Ground(station)));
        labels.Keep(x - 4, y + 1, x + 4, y + 8);
    }

    /// <summary>A triangle that stands on the ground, with the number of rolls under it.</summary>
    private void Drop(ProfileMark drop)
    {
        double station = (drop.From + drop.To) / 2;
        (double x, double y) = (frame.X(station), frame.Y(Ground(station)));
        string tag = $"run {drop.Run}";
        items.Add(new SceneItem.Path(SceneRole.Drop, [x, y + 1, x - 4, y + 8, x + 4, y + 8], true, tag));
        Put(labels.Place(SceneRole.Label, x + 6, y + 9, say.Count("profile.rolls", drop.Count) + (drop.Certain ? "" : " ?"), sight.Type * 0.85, TextAnchor.Start, tag));
    }

    private void Problem(ProfileProblem problem)
    {
        (double x, double y) = (frame.X(problem.Station), frame.Top - (sight.Type * 0.7));
        string tag = $"problem {problem.Index}";
        SceneRole role = problem.Severity == Severity.Error ? SceneRole.Error : SceneRole.Warning;
        items.Add(new SceneItem.Path(role, [x, y - 6, x + 5.5, y + 4, x - 5.5, y + 4], true, tag));
        items.Add(new SceneItem.Text(role, x, y + 3, "!", 8, TextAnchor.Middle, 0, tag));
        labels.Keep(x - 7, y - 7, x + 7, y + 5);
    }

    /// <summary>What a pointer can hit: bays over their whole height, posts over those.</summary>
    private void Targets()
    {
        double last = double.MinValue;
        foreach (ProfileBay bay in picture.Bays.Where(b => Shows(b.From, b.To))) Target(frame.X(bay.From), frame.X(bay.To), $"bay {bay.Post}", ref last);
        last = double.MinValue;
        foreach (ProfilePost post in picture.Posts.Where(p => Shows(p.Station, p.Station)))
        {
            double half = Math.Clamp(PostSpace / 4, 1.5, 7);
            Target(frame.X(post.Station) - half, frame.X(post.Station) + half, $"post {post.Index}", ref last);
        }
    }

    private void Target(double from, double to, string tag, ref double last)
    {
        if (to - last < 1) return;
        last = to;
        items.Add(new SceneItem.Path(SceneRole.Hit, [from, frame.Top, to, frame.Top, to, frame.Bottom, from, frame.Bottom], true, tag));
    }

    private void Put(SceneItem.Text? text)
    {
        if (text is not null) items.Add(text);
    }
}
