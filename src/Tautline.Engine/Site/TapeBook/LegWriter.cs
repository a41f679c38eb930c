using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>
/// Writes legs in the plainest way that walks to the right point: straight on, square to the right or left, on a bearing,
/// or, where no whole second of a bearing leads there, to the point itself. Every way is walked as the reader will walk it.
/// </summary>
internal sealed class LegWriter(TapePage page, TapePoint start)
{
    /// <summary>How far a written leg may end from the vertex: 10 nanometres, so that lengths on the tape stay whole.</summary>
    private const double NearEnough = 1e-8;

    private TapePoint at = start;
    private TapeWay way = new(TapeWay.North, 0);
    private bool begun;

    private sealed record Attempt(string? Turn, string Leg, TapeWay Way, TapePoint End);

    /// <summary>Writes the leg to a point, its turn before it where there is one.</summary>
    public void Write(TapePoint to, double grade)
    {
        var length = page.Length(new Length(at.To(to)));
        var best = Attempts(to, length).FirstOrDefault(a => a.End.To(to) <= NearEnough) ?? ToPoint(to);
        if (best.Turn is not null) page.Add(best.Turn);
        page.Add(best.Leg + GradeText(grade));
        (at, way, begun) = (best.End, best.Way, true);
    }

    /// <summary>Writes a curved leg to a point; the ways to lead it there are those of a straight one.</summary>
    public void Write(TapePoint to, double grade, TapeArc arc)
    {
        var best = Attempts(to, arc).FirstOrDefault(a => a.End.To(to) <= NearEnough) ?? ToPoint(to, arc);
        if (best.Turn is not null) page.Add(best.Turn);
        page.Add(best.Leg + GradeText(grade));
        (at, way, begun) = (best.End, best.Way, true);
    }

    private IEnumerable<Attempt> Attempts(TapePoint to, TapeArc arc)
    {
        if (arc.DegreesOver(at.To(to)) is not { } degrees) yield break;
        var turn = Math.Round(degrees, 4);
        var length = page.Length(new Length(arc.LevelMetres(at.To(to))));
        var byLength = arc.Degrees(LengthText.Parse(length).Value.Metres);
        var bearing = BearingText.Format(arc.WayFrom(at, to).Facing);
        foreach (var (text, by) in new[] { ($"turn {turn.ToString(System.Globalization.CultureInfo.InvariantCulture)}°", turn), ($"length {length}", byLength) })
        {
            yield return Walk(null, $"{Head(arc)} {text}", way, arc, by);
            if (begun) yield return Walk("R 90", $"{Head(arc)} {text}", way.Turn(90), arc, by);
            if (begun) yield return Walk("L 90", $"{Head(arc)} {text}", way.Turn(-90), arc, by);
            yield return Walk(null, $"{Head(arc)} {text} bearing {bearing}", new TapeWay(BearingText.Parse(bearing).Value, 0), arc, by);
        }
    }

    private Attempt Walk(string? turn, string leg, TapeWay on, TapeArc arc, double degrees)
    {
        var (end, ahead) = arc.Walk(at, on, degrees);
        return new Attempt(turn, leg, ahead, end);
    }

    private Attempt ToPoint(TapePoint to, TapeArc arc)
    {
        var (text, read) = PointText(page, to);
        return new Attempt(null, $"{Head(arc)} to {text}", arc.WayAt(at, read), read);
    }

    private string Head(TapeArc arc) => $"arc {page.Word(arc.Bends)} radius {page.Length(arc.Radius)}";

    private IEnumerable<Attempt> Attempts(TapePoint to, string length)
    {
        var metres = LengthText.Parse(length).Value.Metres;
        yield return Walk(null, $"leg {length}", way, metres);
        if (begun) yield return Walk("R 90", $"leg {length}", way.Turn(90), metres);
        if (begun) yield return Walk("L 90", $"leg {length}", way.Turn(-90), metres);
        var bearing = BearingText.Format(at.WayTo(to));
        yield return Walk(null, $"leg {length} bearing {bearing}", new TapeWay(BearingText.Parse(bearing).Value, 0), metres);
    }

    private Attempt Walk(string? turn, string leg, TapeWay on, double metres) => new(turn, leg, on, at.Step(on.Facing, metres));

    private Attempt ToPoint(TapePoint to)
    {
        var (text, read) = PointText(page, to);
        return new Attempt(null, $"leg to {text}", new TapeWay(at.WayTo(read), 0), read);
    }

    /// <summary>A point as it is written, and the point that is read from it.</summary>
    public static (string Text, TapePoint Read) PointText(TapePage page, TapePoint point)
    {
        var (east, north) = (page.Point(new Length(Math.Abs(point.East))), page.Point(new Length(Math.Abs(point.North))));
        var text = $"{east} {(point.East < 0 ? "west" : "east")} {north} {(point.North < 0 ? "south" : "north")}";
        return (text, new TapePoint(Signed(east, point.East), Signed(north, point.North)));
    }

    private static double Signed(string text, double like) => LengthText.Parse(text).Value.Metres * (like < 0 ? -1 : 1);

    private static string GradeText(double grade)
    {
        if (grade == 0) return "";
        var percent = Math.Abs(grade * 100).ToString("0.############", System.Globalization.CultureInfo.InvariantCulture);
        return $" {(grade > 0 ? "up" : "down")} {percent}%";
    }
}
