using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Field.AsBuilt;
using Tautline.Field.Log;

namespace Tautline.Papers.Drawings;

/// <summary>
/// The site from above as it stands: the line as drawn faint, stretches heavier the further the work is, posts where they stand with what they are off, gates that
/// hang. Off the line by inches is nothing at such a scale: a diamond tells it, and the words beside it how much.
/// </summary>
public static class AsBuiltDrawing
{
    private const double Pad = 30;
    private const double BarRoom = 34;
    private const double PaperFoot = 58;

    /// <param name="width">Of the whole drawing.</param>
    /// <param name="onPaper">Else for a small screen: legend under the bar, no scale in words.</param>
    /// <returns>Nothing for a job without lines.</returns>
    public static Scene? Of(BuiltRecord record, double width, double height, PlanWords words, Phrases say, bool onPaper = true)
    {
        PlanPicture picture = PictureStage.Of(record.Now, words.Units);
        if (picture.Legs.Count == 0) return null;
        var signs = Signs(record, say);
        double left = onPaper ? 150 : 4;
        int columns = Math.Max(1, (int)((width - left) / PlanFurniture.LegendWide(signs.Select(s => (s.Words, (Action<double, double>)((_, _) => { }))).ToList())));
        int perColumn = (signs.Count + columns - 1) / columns;
        double foot = Math.Max(onPaper ? PaperFoot : 0, (onPaper ? 8 : BarRoom + 8) + (perColumn * PlanFurniture.LegendStep));
        (double West, double South, double East, double North) area = Area(record, picture);
        DrawnScale scale = DrawnScale.For(area.East - area.West, area.North - area.South, width - (2 * Pad), height - foot - (2 * Pad), words.Units);
        double k = scale.UnitsPerMetre;
        (double x, double y) = ((width - ((area.East - area.West) * k)) / 2, (height - foot - ((area.North - area.South) * k)) / 2);
        var sketch = new Sketch(width, height);
        sketch.Labels.Keep(0, height - foot, width, height);
        PlanFurniture.ScaleBar(sketch, scale, k, height - foot, words, say, onPaper);
        PlanFurniture.Legend(sketch, [.. signs.Select(s => (s.Words, (Action<double, double>)((sx, sy) => s.Draw(sketch, sx, sy))))], left, height - foot + (onPaper ? 12 : BarRoom + 10), perColumn);
        PlanFurniture.North(sketch, say);
        new Drawer(record, picture, sketch, words, say, k, area.West - (x / k), area.North + (y / k)).All();
        return sketch.Done(k, onPaper ? scale.Words : "", (area.West - (x / k), area.North + (y / k)));
    }

    /// <summary>Everything that is drawn. A post whose line is gone may stand anywhere: it is only in the table.</summary>
    private static (double West, double South, double East, double North) Area(BuiltRecord record, PlanPicture picture)
    {
        (double west, double south, double east, double north) = (picture.Extent[0], picture.Extent[1], picture.Extent[2], picture.Extent[3]);
        foreach (PostDone post in record.Posts.Select(p => p.Post))
            (west, south, east, north) = (Math.Min(west, post.East.Metres), Math.Min(south, post.North.Metres), Math.Max(east, post.East.Metres), Math.Max(north, post.North.Metres));
        return (west, south, east, north);
    }

    /// <summary>Whether a post is worth a sign round it: over tolerance, moved, of another kind, or not drawn at all.</summary>
    private static bool Told(StandingPost post) => post.Drawn is null || post.OtherKind || post.OutOfLine || post.Moved;

    private static List<(string Words, Action<Sketch, double, double> Draw)> Signs(BuiltRecord record, Phrases say)
    {
        void Stroke(Sketch sketch, SceneRole role, double x, double y) => sketch.Line(role, "", x, y - 2.5, x + 13, y - 2.5);
        List<(string, Action<Sketch, double, double>)> signs = [(say["asbuilt.sign.drawn"], (s, x, y) => Stroke(s, SceneRole.WireOff, x, y))];
        if (record.ToBuild.Count > 0) signs.Add((say["asbuilt.sign.toBuild"], (s, x, y) => s.Circle(SceneRole.Wire, x + 6, y - 2.5, 1.9)));
        if (record.Posts.Count > 0) signs.Add((say["asbuilt.sign.stands"], (s, x, y) => Solid(s, x + 6, y - 2.5, 3, box: false)));
        if (record.Posts.Any(p => p.Drawn is not null && Told(p))) signs.Add((say["asbuilt.sign.off"], (s, x, y) => Ring(s, x + 6, y - 2.5, 3, 4.5, drawn: true, box: false)));
        if (record.Extra.Any()) signs.Add((say["asbuilt.sign.notDrawn"], (s, x, y) => Ring(s, x + 6, y - 2.5, 3, 4.5, drawn: false, box: false)));
        if (Runs(record, Work.Framed).Any()) signs.Add((say["asbuilt.sign.framed"], (s, x, y) => Stroke(s, Role(Work.Framed), x, y)));
        if (Runs(record, Work.Hung).Any()) signs.Add((say["asbuilt.sign.hung"], (s, x, y) => Stroke(s, Role(Work.Hung), x, y)));
        if (Runs(record, Work.Tied).Any()) signs.Add((say["asbuilt.sign.tied"], (s, x, y) => Stroke(s, Role(Work.Tied), x, y)));
        if (record.Progress.Gates.Any(g => g.Hung)) signs.Add((say["asbuilt.sign.gate"], (s, x, y) => Stroke(s, SceneRole.Rail, x, y)));
        if (record.Progress.Gates.Any(g => !g.Hung)) signs.Add((say["asbuilt.sign.noGate"], (s, x, y) => Stroke(s, SceneRole.Hidden, x, y)));
        return signs;
    }

    /// <summary>Round a post a diamond, or a square where the drawing has none: rings look like gate posts.</summary>
    private static void Ring(Sketch sketch, double x, double y, double post, double ring, bool drawn, bool box, string tag = "")
    {
        if (drawn) sketch.Shape(SceneRole.Warning, tag, x, y - (ring * 1.4), x + (ring * 1.4), y, x, y + (ring * 1.4), x - (ring * 1.4), y);
        else sketch.Box(SceneRole.Warning, x - ring, y - ring, x + ring, y + ring, tag);
        Solid(sketch, x, y, post, box);
    }

    /// <summary>What stands is solid, whatever kind of post it is; terminals are square.</summary>
    private static void Solid(Sketch sketch, double x, double y, double r, bool box, string tag = "")
    {
        // The pen of the role is round the sign too.
        double half = Math.Max(0.1, (r * 0.75) - (RoleStyle.Of(SceneRole.Step).Pen / 2));
        if (box) sketch.Box(SceneRole.Step, x - half, y - half, x + half, y + half, tag);
        else sketch.Circle(SceneRole.Step, x, y, half, tag);
    }

    private enum Work { None, Framed, Hung, Tied }

    private static SceneRole Role(Work work) => work switch { Work.Framed => SceneRole.Axis, Work.Hung => SceneRole.Rail, _ => SceneRole.Terminal };

    /// <summary>How far a run is: tied fabric hangs, and what hangs is on a frame, whatever was marked.</summary>
    private static Work Of(RunProgress run)
    {
        bool Done(string operation) => run.Operations.Any(o => o.Operation == operation && o.Done >= o.Of);
        return Done(Operations.Tie) ? Work.Tied : Done(Operations.Hang) ? Work.Hung : Done(Operations.Frame) ? Work.Framed : Work.None;
    }

    private static IEnumerable<RunProgress> Runs(BuiltRecord record, Work work) => record.Progress.Runs.Where(r => Of(r) == work);

    private sealed class Drawer(BuiltRecord record, PlanPicture picture, Sketch sketch, PlanWords words, Phrases say, double k, double atLeft, double atTop)
    {
        private readonly double r = Math.Clamp(PlanFurniture.Apart(picture) * k * 0.3, 0.5, 3);

        private double Ringed => Math.Max(4, r * 1.5);

        private double X(double east) => (east - atLeft) * k;

        private double Y(double north) => (atTop - north) * k;

        private double[] Bent(IReadOnlyList<double> points) => [.. Enumerable.Range(0, points.Count / 2).SelectMany(i => new[] { X(points[2 * i]), Y(points[(2 * i) + 1]) })];

        public void All()
        {
            for (int leg = 0; leg < picture.Legs.Count; leg++) sketch.Line(SceneRole.WireOff, $"leg {leg}", Leg(leg));
            foreach ((int i, RunProgress run) in record.Progress.Runs.Index())
                if (Of(run) is not Work.None and var work)
                    sketch.Line(Role(work), $"run {i}", Bent(LinePaths.Between(record.Now.Basis.Job, record.Now.Lines[run.Line].Id, run.From, run.To)));
            foreach (GatePicture gate in picture.Gates) Gate(gate);
            foreach (PostAt post in record.ToBuild.Concat(record.LeftOut)) Faint(record.Drawn.Lines[post.Line].Posts[post.Post], $"drawn {post.Line}.{post.Post}");
            foreach ((int i, StandingPost post) in record.Posts.Index()) Stands(post, $"stands {i}");
            foreach ((int i, StandingPost post) in record.Posts.Index().Where(p => Told(p.Item))) Say(post, $"stands {i}");
            Terminals();
            RunNames();
            LinePosts();
        }

        private double[] Leg(int index)
        {
            (int from, int to) = (picture.LegPaths.Starts.Span[index], picture.LegPaths.Starts.Span[index + 1]);
            return Bent(picture.LegPaths.Points.Span[(2 * from)..(2 * to)].ToArray());
        }

        private void Gate(GatePicture gate)
        {
            int line = gate.Line < picture.Lines.Count ? picture.Lines[gate.Line].Plan : -1;
            bool hung = record.Progress.Gates.Any(g => g.Line == line && g.Gate == gate.Index && g.Hung);
            foreach (IReadOnlyList<double> leaf in gate.Leaves) sketch.Line(hung ? SceneRole.Rail : SceneRole.Hidden, $"gate {gate.Id}", Bent(leaf));
            if (!hung) return;
            foreach (IReadOnlyList<double> arc in gate.Arcs) sketch.Line(SceneRole.Swing, $"gate {gate.Id}", Bent(arc));
        }

        private void Faint(PostPlan post, string tag)
        {
            (double x, double y) = (X(post.East.Metres), Y(post.North.Metres));
            if (post.Kind == PostKind.Line) sketch.Circle(SceneRole.Wire, x, y, r * 0.6, tag);
            else sketch.Box(SceneRole.Wire, x - r, y - r, x + r, y + r, tag);
            sketch.Labels.Keep(x - r, y - r, x + r, y + r);
        }

        private void Stands(StandingPost post, string tag)
        {
            (double x, double y) = (X(post.Post.East.Metres), Y(post.Post.North.Metres));
            PostPlan? drawn = post.Drawn is { } index ? record.Drawn.Lines[post.Line].Posts[index] : null;
            double around = Told(post) ? Ringed : r;
            if (Told(post))
            {
                if (drawn is not null && Math.Abs(post.Along.Metres) * k > around)
                {
                    Faint(drawn, "");
                    sketch.Line(SceneRole.Dimension, "", X(drawn.East.Metres), Y(drawn.North.Metres), x, y);
                }

                Ring(sketch, x, y, r, around, drawn is not null, !post.Post.Line, tag);
            }
            else Solid(sketch, x, y, r, !post.Post.Line, tag);

            sketch.Labels.Keep(x - around, y - around, x + around, y + around);
        }

        private void Say(StandingPost post, string tag)
        {
            (double x, double y) = (X(post.Post.East.Metres), Y(post.Post.North.Metres));
            string far = string.Join(", ", new[]
            {
                post.Drawn is null ? say["asbuilt.notDrawn"] : "", say.Along(words, post.Along), say.Off(words, post.Off), post.OtherKind ? say["asbuilt.otherKind"] : "",
            }.Where(w => w.Length > 0));
            string told = post.Drawn is { } drawn ? $"{PlanWords.Mark(post.Line, record.Drawn.Lines[post.Line].Posts[drawn])}: {far}" : far;
            double off = (Ringed * 1.4) + 2;
            sketch.Say(SceneRole.Warning, told, 7, tag, (x + off, y - 4, TextAnchor.Start), (x - off, y - 4, TextAnchor.End), (x + off, y + 9, TextAnchor.Start), (x - off, y + 9, TextAnchor.End), (x, y - off - 3, TextAnchor.Middle), (x, y + off + 8, TextAnchor.Middle), (x + off, y - 14, TextAnchor.Start), (x + off, y + 19, TextAnchor.Start));
        }

        private void Terminals()
        {
            foreach ((int l, LinePlan line) in record.Drawn.Lines.Index())
                foreach (PostPlan post in line.Posts.Where(p => p.Kind != PostKind.Line)) Mark(SceneRole.Strong, post, l, 7);
        }

        /// <summary>Last of all, and only where there is room: the tables name every post.</summary>
        private void LinePosts()
        {
            if (PlanFurniture.Apart(picture) * k < 13) return;
            foreach ((int l, LinePlan line) in record.Drawn.Lines.Index())
                foreach ((int p, PostPlan post) in line.Posts.Index().Where(p => p.Item.Kind == PostKind.Line && !record.Posts.Any(s => s.Line == l && s.Drawn == p.Index && Told(s)))) Mark(SceneRole.Label, post, l, 6);
        }

        private void Mark(SceneRole role, PostPlan post, int line, double size)
        {
            (double x, double y) = (X(post.East.Metres), Y(post.North.Metres));
            sketch.Say(role, PlanWords.Mark(line, post), size, "", (x + 5, y - 5, TextAnchor.Start), (x - 5, y - 5, TextAnchor.End), (x + 5, y + 10, TextAnchor.Start), (x - 5, y + 10, TextAnchor.End));
        }

        private void RunNames()
        {
            foreach (RunProgress run in record.Progress.Runs)
            {
                IReadOnlyList<double> half = LinePaths.Between(record.Now.Basis.Job, record.Now.Lines[run.Line].Id, run.From, run.From + ((run.To - run.From) / 2));
                if (half.Count < 2) continue;
                (double x, double y) = (X(half[^2]), Y(half[^1]));
                int number = record.Now.Lines[run.Line].Runs[run.Run].Number;
                string name = say.Say("paper.site.run", ("n", record.Now.Lines.Count > 1 ? PlanWords.Mark(run.Line, number) : number));
                sketch.Say(SceneRole.Note, name, 6.5, "", (x + 10, y - 12, TextAnchor.Start), (x - 10, y - 12, TextAnchor.End), (x + 10, y + 16, TextAnchor.Start), (x - 10, y + 16, TextAnchor.End));
            }
        }
    }
}
