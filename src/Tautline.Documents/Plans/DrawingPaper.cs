using System.Globalization;
using Tautline.Documents.Paper;
using Tautline.Documents.Plans.Packet;
using Tautline.Documents.Scenes;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Documents.Plans;

/// <summary>The drawings of a job as sheets: the site from above; each line from its side, heights drawn taller; the same true to scale; terminals, gates and footings.</summary>
public static class DrawingPaper
{
    private const double Foot = 0.3048;

    /// <exception cref="ArgumentException">The plan has errors: its posts are not known.</exception>
    public static PaperDocument Of(Plan plan, PaperChoice choice)
    {
        if (plan.HasErrors) throw new ArgumentException("A plan with errors cannot be drawn.", nameof(plan));
        var desk = new PacketDesk(plan, choice);
        List<PaperSheet> sheets = [];
        if (SiteSheet.Fits(plan)) sheets.Add(SiteSheet.Of(desk));
        foreach ((int line, LinePlan planned) in plan.Lines.Index())
        {
            sheets.Add(Side(desk, line, exaggerated: true));
            sheets.Add(Side(desk, line, exaggerated: false));
            sheets.AddRange(CutSheet.Terminals(planned).Select(p => CutSheet.Of(desk, line, p)));
            sheets.AddRange(planned.Gates.Index().Select(g => GateSheet.Of(desk, line, g.Index)));
        }

        if (sheets.Count == 0) sheets.Add(JobSheet.Of(desk, 0));
        return new(choice.Say.Say("paper.drawings", ("job", PaperSay.Job(plan)))) { Words = choice.Words, Format = choice.Format, Sheets = sheets, Footer = desk.Footer };
    }

    /// <summary>A line from its side in strips under each other. True to scale a strip is as long as still shows a post; drawn taller it is longer.</summary>
    private static PaperSheet Side(PacketDesk desk, int line, bool exaggerated)
    {
        var format = new PaperFormat(desk.Choice.Format.Size, Landscape: true);
        LinePlan planned = desk.Plan.Lines[line];
        ProfilePicture picture = ProfileStage.Of(desk.Plan, line);
        double width = format.RoomWidth, tall = exaggerated ? 168 : 150;
        double length = Math.Max(1, planned.Level.Metres);
        // Feet to the inch, or one to so many: round scales, the same for all strips.
        double[] steps = desk.Choice.Units == UnitSystem.Metric ? [100, 200, 250, 500, 1000, 2000, 2500, 5000, 10_000, 20_000, 50_000] : [8, 10, 20, 30, 40, 50, 60, 80, 100, 200, 300, 400, 500, 1000, 2000, 5000];
        double wanted = exaggerated ? Math.Clamp(length / 3, 30, 400) : Math.Clamp(length / 4, 18, 60);
        double PerStrip(double step) => (width - 62) / (desk.Choice.Units == UnitSystem.Metric ? 72 / 0.0254 / step : 72 / (step * Foot));
        double step = steps.FirstOrDefault(s => PerStrip(s) >= wanted, steps[^1]);
        double strip = PerStrip(step);
        List<PaperBlock> blocks = [];
        for (double from = 0; from < length - 0.01 || blocks.Count == 0; from += strip)
        {
            Scene scene = ProfileDrawing.Of(picture, new(from - 0.3, from + strip, width, tall, exaggerated ? 0 : 1), desk.Say.Words, desk.Choice.Say);
            string times = scene.Exaggeration.ToString("0.##", CultureInfo.InvariantCulture);
            double along = scene.UnitsPerMetre > 0 ? (desk.Choice.Units == UnitSystem.Metric ? 72 / 0.0254 / scene.UnitsPerMetre : 72 / scene.UnitsPerMetre / Foot) : step;
            string words = desk.Choice.Units == UnitSystem.Metric
                ? desk.Choice.Say.Say("paper.profile.scalesMetric", ("along", PaperSay.Number(along, "#,0.#")), ("times", times))
                : desk.Choice.Say.Say("paper.profile.scales", ("along", PaperSay.Number(along, "#,0.#") + " ft"), ("times", times));
            blocks.Add(new PaperBlock.Drawing(scene, words));
        }

        return desk.Sheet(desk.Choice.Say.Say(exaggerated ? "paper.profile" : "paper.elevation", ("line", desk.Say.Line(planned))), $"{(exaggerated ? "profile" : "elevation")} {planned.Id}") with { Format = format, Blocks = blocks };
    }
}
