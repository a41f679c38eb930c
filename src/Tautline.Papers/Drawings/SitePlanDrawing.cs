using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;

namespace Tautline.Papers.Drawings;

/// <summary>
/// The job seen from above, north up, at a scale there is a ruler for: legs with length and bearing, stations, every post by its kind, gates with the way of
/// their leaves, stretches, roll drops, runs by number; scale bar, north and a legend of the signs that are used.
/// </summary>
public static class SitePlanDrawing
{
    private const double Foot = 58;
    private const double Pad = 34;

    /// <param name="width">Of the whole drawing, in points.</param>
    /// <returns>Nothing for a job without lines.</returns>
    public static Scene? Of(Plan plan, PlanPicture picture, double width, double height, PlanWords words, Phrases say)
    {
        if (picture.Legs.Count == 0) return null;
        (double west, double south, double east, double north) = (picture.Extent[0], picture.Extent[1], picture.Extent[2], picture.Extent[3]);
        DrawnScale scale = DrawnScale.For(east - west, north - south, width - (2 * Pad), height - Foot - (2 * Pad), words.Units);
        double k = scale.UnitsPerMetre;
        (double left, double top) = ((width - ((east - west) * k)) / 2, (height - Foot - ((north - south) * k)) / 2);
        var drawing = new Drawer(plan, picture, new Sketch(width, height), say, k, west - (left / k), north + (top / k));
        drawing.All(scale, words);
        return drawing.Sketch.Done(k, scale.Words, (west - (left / k), north + (top / k)));
    }

    private sealed class Drawer(Plan plan, PlanPicture picture, Sketch sketch, Phrases say, double k, double atLeft, double atTop)
    {
        /// <summary>Half a post sign; smaller where the posts crowd.</summary>
        private readonly double r = Math.Clamp(PlanFurniture.Apart(picture) * k * 0.3, 0.5, 3.2);

        public Sketch Sketch => sketch;

        private double X(double east) => (east - atLeft) * k;

        private double Y(double north) => (atTop - north) * k;

        public void All(DrawnScale scale, PlanWords words)
        {
            sketch.Labels.Keep(0, sketch.Height - Foot, sketch.Width, sketch.Height);
            Foots(scale, words);
            PlanFurniture.North(sketch, say);
            foreach (StretchPicture stretch in picture.Stretches) Stretch(stretch);
            foreach ((int i, LegPicture _) in picture.Legs.Index()) sketch.Line(SceneRole.Leg, $"leg {i}", [.. Leg(i)]);
            foreach (GatePicture gate in picture.Gates) Gate(gate);
            foreach (MarkPicture mark in picture.Stations) Tick(mark);
            Posts();
            foreach (GatePicture gate in picture.Gates) Named(gate);
            foreach ((int i, LegPicture leg) in picture.Legs.Index()) Measure(i, leg);
            Runs();
            foreach (DropPicture drop in picture.Drops) Drop(drop);
            foreach (StretchPicture stretch in picture.Stretches.Where(s => s.Path.Count >= 4)) NameStretch(stretch);
            foreach (MarkPicture mark in picture.Stations) NameStation(mark);
            MarksOfLinePosts();
        }

        private IEnumerable<double> Leg(int index)
        {
            ReadOnlyMemory<double> points = picture.LegPaths.Points;
            (int from, int to) = (picture.LegPaths.Starts.Span[index], picture.LegPaths.Starts.Span[index + 1]);
            for (int i = from; i < to; i++)
            {
                yield return X(points.Span[2 * i]);
                yield return Y(points.Span[(2 * i) + 1]);
            }
        }

        private double[] Bent(IReadOnlyList<double> points)
            => [.. Enumerable.Range(0, points.Count / 2).SelectMany(i => new[] { X(points[2 * i]), Y(points[(2 * i) + 1]) })];

        private void Stretch(StretchPicture stretch)
        {
            double half = Math.Max(3.5, stretch.Width / 2 * k);
            double[] around = Bent(stretch.Around.Count >= 4 ? stretch.Around : stretch.Path);
            if (around.Length < 4) return;
            sketch.Shape(Role(stretch), $"{stretch.Group} {stretch.Id}", [.. Band(around, half)]);
        }

        private static SceneRole Role(StretchPicture stretch) => (stretch.Group, stretch.Kind) switch
        {
            ("grading", "cut") => SceneRole.Cut,
            ("grading", _) => SceneRole.Fill,
            _ => SceneRole.Zone,
        };

        /// <summary>A strip along a path, as wide on both sides.</summary>
        private static IEnumerable<double> Band(double[] path, double half)
        {
            List<double> right = [], left = [];
            for (int i = 0; i + 1 < path.Length; i += 2)
            {
                (int a, int b) = (Math.Max(0, i - 2), Math.Min(path.Length - 2, i + 2));
                (double dx, double dy) = (path[b] - path[a], path[b + 1] - path[a + 1]);
                double length = Math.Max(1e-9, Math.Sqrt((dx * dx) + (dy * dy)));
                (double nx, double ny) = (-dy / length * half, dx / length * half);
                right.AddRange([path[i] + nx, path[i + 1] + ny]);
                left.InsertRange(0, [path[i] - nx, path[i + 1] - ny]);
            }

            return [.. right, .. left];
        }

        private void NameStretch(StretchPicture stretch)
        {
            int middle = stretch.Path.Count / 4 * 2;
            (double x, double y) = (X(stretch.Path[middle]), Y(stretch.Path[middle + 1]));
            string kind = say.Or("obstacle." + stretch.Kind, stretch.Kind);
            string words = stretch.Group == "obstacle" && stretch.Words.Length > 0 ? kind : stretch.Group == "grading" ? say.Or("paper.site." + stretch.Kind, stretch.Kind) : kind;
            sketch.Say(SceneRole.Note, words, 6.5, "", (x + 8, y - 8, TextAnchor.Start), (x - 8, y - 8, TextAnchor.End), (x + 8, y + 14, TextAnchor.Start), (x - 8, y + 14, TextAnchor.End));
        }

        private void Gate(GatePicture gate)
        {
            string tag = $"gate {gate.Id}";
            foreach (IReadOnlyList<double> leaf in gate.Leaves) sketch.Line(SceneRole.Rail, tag, Bent(leaf));
            foreach (IReadOnlyList<double> leaf in gate.Open) sketch.Line(SceneRole.Hidden, tag, Bent(leaf));
            foreach (IReadOnlyList<double> arc in gate.Arcs) sketch.Line(SceneRole.Swing, tag, Bent(arc));
            if (gate.Roller.Count == 2) PostSigns.Draw(sketch, PostKind.Gate, X(gate.Roller[0]), Y(gate.Roller[1]), r, tag);
        }

        private void Named(GatePicture gate)
        {
            (double x, double y) = ((X(gate.Faces[0]) + X(gate.Faces[2])) / 2, (Y(gate.Faces[1]) + Y(gate.Faces[3])) / 2);
            string words = say.Or("gate." + gate.Kind, gate.Kind) + gate.Words[gate.Kind.Length..];
            sketch.Say(SceneRole.Strong, words, 7, $"gate {gate.Id}", (x, y - 12, TextAnchor.Middle), (x, y + 18, TextAnchor.Middle), (x + 12, y + 3, TextAnchor.Start), (x - 12, y + 3, TextAnchor.End), (x, y - 24, TextAnchor.Middle));
        }

        private void Tick(MarkPicture mark)
        {
            (double sin, double cos) = Math.SinCos(mark.Azimuth * Math.PI / 180);
            (double x, double y) = (X(mark.East), Y(mark.North));
            sketch.Line(SceneRole.Axis, "", x - (4 * cos), y - (4 * sin), x + (4 * cos), y + (4 * sin));
        }

        private void NameStation(MarkPicture mark)
        {
            (double sin, double cos) = Math.SinCos(mark.Azimuth * Math.PI / 180);
            (double x, double y) = (X(mark.East), Y(mark.North));
            foreach (int side in (int[])[-1, 1])
                if (sketch.Say(SceneRole.Label, x + (side * 13 * cos), y + (side * 13 * sin) + 2.4, mark.Words, TextAnchor.Middle, 6)) return;
        }

        private void Posts()
        {
            ReadOnlySpan<double> at = picture.PostsAt.Span;
            int post = 0;
            foreach ((int line, LinePlan planned) in plan.Lines.Index())
            {
                foreach (PostPlan one in planned.Posts)
                {
                    (double x, double y) = (X(at[2 * post]), Y(at[(2 * post) + 1]));
                    PostSigns.Draw(sketch, one.Kind, x, y, r, $"post {post}");
                    sketch.Labels.Keep(x - r, y - r, x + r, y + r);
                    post++;
                }

                post -= planned.Posts.Count;
                foreach (PostPlan one in planned.Posts)
                {
                    (double x, double y) = (X(at[2 * post]), Y(at[(2 * post) + 1]));
                    if (one.Kind != PostKind.Line) Mark(SceneRole.Strong, x, y, PlanWords.Mark(line, one), post);
                    post++;
                }
            }
        }

        private void Mark(SceneRole role, double x, double y, string words, int post) => sketch.Say(
            role, words, role == SceneRole.Strong ? 7 : 6, $"post {post}",
            (x + 5, y - 5, TextAnchor.Start), (x - 5, y - 5, TextAnchor.End), (x + 5, y + 10, TextAnchor.Start), (x - 5, y + 10, TextAnchor.End));

        /// <summary>Last of all, and only where there is room: the tables name every post.</summary>
        private void MarksOfLinePosts()
        {
            if (PlanFurniture.Apart(picture) * k < 13) return;
            ReadOnlySpan<double> at = picture.PostsAt.Span;
            int post = 0;
            foreach ((int line, LinePlan planned) in plan.Lines.Index())
                foreach (PostPlan one in planned.Posts)
                {
                    if (one.Kind == PostKind.Line) Mark(SceneRole.Label, X(at[2 * post]), Y(at[(2 * post) + 1]), PlanWords.Mark(line, one), post);
                    post++;
                }
        }

        private void Measure(int index, LegPicture leg)
        {
            double[] path = [.. Leg(index)];
            double long1 = Math.Sqrt(Math.Pow(path[^2] - path[0], 2) + Math.Pow(path[^1] - path[1], 2));
            string words = leg.Bearing.Length > 0 ? $"{leg.Length}  {leg.Bearing}" : leg.Length;
            if (LabelBoard.Wide(SceneRole.Label, words, Sketch.Type) > long1) words = leg.Length;
            double turn = ((leg.Azimuth - 90 + 540) % 360) - 180;
            double upright = turn is > 90 or <= -90 ? turn + 180 : turn;
            (double sin, double cos) = Math.SinCos(upright * Math.PI / 180);
            foreach (double off in (double[])[-9, 15, -18, 24])
                if (sketch.Say(SceneRole.Label, X(leg.East) - (off * sin), Y(leg.North) + (off * cos), words, TextAnchor.Middle, Sketch.Type, $"leg {index}", upright)) return;
        }

        private void Runs()
        {
            ReadOnlySpan<int> runs = picture.Runs.Span;
            ReadOnlySpan<double> at = picture.PostsAt.Span;
            for (int i = 0; i + 3 < runs.Length; i += 4)
            {
                int middle = (runs[i + 2] + Math.Max(runs[i + 2], runs[i + 3])) / 2;
                (double x, double y) = (X(at[2 * middle]), Y(at[(2 * middle) + 1]));
                int number = plan.Lines[runs[i]].Runs[runs[i + 1]].Number;
                string words = say.Say("paper.site.run", ("n", plan.Lines.Count > 1 ? $"{PlanWords.Mark(runs[i], number)}" : number));
                sketch.Say(SceneRole.Note, words, 6.5, $"run {i / 4}", (x + 12, y - 16, TextAnchor.Start), (x - 12, y - 16, TextAnchor.End), (x + 12, y + 20, TextAnchor.Start), (x - 12, y + 20, TextAnchor.End));
            }
        }

        private void Drop(DropPicture drop)
        {
            (double x, double y) = (X(drop.East), Y(drop.North));
            string words = say.Count("profile.rolls", drop.Rolls) + (drop.Certain ? "" : " ?");
            sketch.Shape(SceneRole.Drop, $"run {drop.Run}", x, y + 4, x - 4, y + 11, x + 4, y + 11);
            sketch.Say(SceneRole.Label, words, 6, $"run {drop.Run}", (x + 6, y + 11, TextAnchor.Start), (x - 6, y + 11, TextAnchor.End), (x + 6, y + 19, TextAnchor.Start));
        }

        /// <summary>Under the drawing: scale bar, scale in words, legend.</summary>
        private void Foots(DrawnScale scale, PlanWords words)
        {
            double top = sketch.Height - Foot;
            double bar = PlanFurniture.ScaleBar(sketch, scale, k, top, words, say);
            Legend(Math.Max(150, bar + 60), top + 12);
        }

        private void Legend(double left, double top)
        {
            List<(string Words, Action<double, double> Sign)> rows = [];
            foreach (PostKind kind in PostSigns.All.Where(kind => plan.Lines.Any(l => l.Posts.Any(p => p.Kind == kind))))
                rows.Add((say["kind." + PlanWords.Kind(kind)], (x, y) => PostSigns.Draw(sketch, kind, x + 6, y - 2.5, 3, "")));
            if (picture.Gates.Count > 0)
            {
                rows.Add((say["paper.site.leaf"], (x, y) => sketch.Line(SceneRole.Rail, "", x, y - 2.5, x + 13, y - 2.5)));
                rows.Add((say["paper.site.open"], (x, y) => sketch.Line(SceneRole.Hidden, "", x, y - 2.5, x + 13, y - 2.5)));
            }

            if (picture.Drops.Count > 0) rows.Add((say["paper.site.drop"], (x, y) => sketch.Shape(SceneRole.Drop, "", x + 6, y - 6, x + 2, y + 1, x + 10, y + 1)));
            if (picture.Stretches.Any(s => Role(s) == SceneRole.Zone)) rows.Add((say["paper.site.zone"], (x, y) => sketch.Box(SceneRole.Zone, x, y - 6, x + 13, y + 1)));
            if (picture.Stretches.Any(s => Role(s) == SceneRole.Cut)) rows.Add((say["paper.site.cut"], (x, y) => sketch.Box(SceneRole.Cut, x, y - 6, x + 13, y + 1)));
            if (picture.Stretches.Any(s => Role(s) == SceneRole.Fill)) rows.Add((say["paper.site.fill"], (x, y) => sketch.Box(SceneRole.Fill, x, y - 6, x + 13, y + 1)));
            PlanFurniture.Legend(sketch, rows, left, top, 4);
        }
    }
}
