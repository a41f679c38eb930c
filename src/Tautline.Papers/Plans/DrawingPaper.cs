using System.Globalization;
using Tautline.Documents.Scenes;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans.Packet;

namespace Tautline.Papers.Plans;

/// <summary>The drawings of a job as sheets: the site from above; each line from its side, heights drawn taller; the same true to scale; terminals, gates and footings.</summary>
public static class DrawingPaper
{
    private const double Foot = 0.3048;
    private const double Before = 0.4;

    /// <exception cref="ArgumentException">The plan has errors: its posts are not known.</exception>
    public static PaperDocument Of(Plan plan, PaperChoice choice)
    {
        if (plan.HasErrors) throw new ArgumentException("A plan with errors cannot be drawn.", nameof(plan));
        var desk = new PacketDesk(plan, choice);
        List<PaperSheet> sheets = [];
        sheets.Add(SiteSheet.Of(desk));
        foreach ((int line, LinePlan planned) in plan.Lines.Index())
        {
            PaperSheet taller = Side(desk, line, exaggerated: true);
            // On steep ground nothing is drawn taller than it is: the elevation then says all.
            if (taller.Blocks.OfType<PaperBlock.Drawing>().Any(d => d.Scene.Exaggeration > 1)) sheets.Add(taller);
            sheets.Add(Side(desk, line, exaggerated: false));
            sheets.AddRange(CutSheet.Terminals(planned).Select(p => CutSheet.Of(desk, line, p)));
            sheets.AddRange(planned.Gates.Index().Select(g => GateSheet.Of(desk, line, g.Index)));
        }

        return new(choice.Say.Say("paper.drawings", ("job", PaperSay.Job(plan)))) { Words = choice.Words, Format = choice.Format, Sheets = sheets, Footer = desk.Footer };
    }

    /// <summary>The site plan alone.</summary>
    /// <exception cref="ArgumentException">The plan has errors: its posts are not known.</exception>
    public static PaperDocument Site(Plan plan, PaperChoice choice)
    {
        if (plan.HasErrors) throw new ArgumentException("A plan with errors cannot be drawn.", nameof(plan));
        var desk = new PacketDesk(plan, choice);
        return new(choice.Say.Say("paper.drawings", ("job", PaperSay.Job(plan)))) { Words = choice.Words, Format = choice.Format, Sheets = [SiteSheet.Of(desk)], Footer = desk.Footer };
    }

    /// <summary>The site plan as a scene, for files of other programs.</summary>
    public static Scene? SiteScene(Plan plan, PaperChoice choice) => SiteSheet.Drawn(new PacketDesk(plan, choice)).Scene;

    /// <summary>A line from its side in strips under each other. True to scale a strip is as long as still shows a post; drawn taller it is longer.</summary>
    private static PaperSheet Side(PacketDesk desk, int line, bool exaggerated)
    {
        var format = new PaperFormat(desk.Choice.Format.Size, Landscape: true);
        LinePlan planned = desk.Plan.Lines[line];
        ProfilePicture picture = ProfileStage.Of(desk.Plan, line, desk.Choice.Units);
        double width = format.RoomWidth, tall = exaggerated ? 168 : 150;
        double length = Math.Max(1, planned.Level.Metres);
        // Feet to the inch, or one to so many: round scales, the same for all strips.
        double[] steps = desk.Choice.Units == UnitSystem.Metric ? [100, 200, 250, 500, 1000, 2000, 2500, 5000, 10_000, 20_000, 50_000] : [8, 10, 20, 30, 40, 50, 60, 80, 100, 200, 300, 400, 500, 1000, 2000, 5000];
        double wanted = exaggerated ? Math.Clamp(length / 3, 30, 400) : Math.Clamp(length / 4, 18, 60);
        // What a strip is long at a scale; a little of it is before its first station, so that a post there is whole.
        double PerStrip(double step) => ProfileFrame.Inner(width, new ProfileSight(0, 1, width, tall, 1).Type) / (desk.Choice.Units == UnitSystem.Metric ? 72 / 0.0254 / step : 72 / (step * Foot));
        // Ground too steep for its strip would be drawn smaller: then all of the line goes to the next round scale.
        foreach (double step in steps.SkipWhile(s => PerStrip(s) < wanted && s < steps[^1]))
        {
            double units = desk.Choice.Units == UnitSystem.Metric ? 72 / 0.0254 / step : 72 / (step * Foot);
            foreach (double height in (double[])[tall, 2 * tall])
            {
                List<Scene> scenes = Strips(desk, picture, PerStrip(step), width, height, exaggerated);
                if (scenes.TrueForAll(s => Math.Abs((s.UnitsPerMetre / units) - 1) < 1e-6) || step == steps[^1])
                    return Sheet(desk, line, exaggerated, format, scenes);
            }
        }

        throw new InvalidOperationException("There is always a last scale.");
    }

    private static List<Scene> Strips(PacketDesk desk, ProfilePicture picture, double strip, double width, double tall, bool exaggerated)
    {
        List<Scene> scenes = [];
        for (double from = 0; from < picture.Length - 0.01 || scenes.Count == 0; from += strip - Before)
            scenes.Add(ProfileDrawing.Of(picture, new(from - Before, from - Before + strip, width, tall, exaggerated ? 0 : 1), desk.Say.Words, desk.Choice.Say));
        return scenes;
    }

    private static PaperSheet Sheet(PacketDesk desk, int line, bool exaggerated, PaperFormat format, List<Scene> scenes)
    {
        LinePlan planned = desk.Plan.Lines[line];
        List<PaperBlock> blocks = [];
        foreach (Scene scene in scenes)
        {
            string times = scene.Exaggeration.ToString("0.##", CultureInfo.InvariantCulture);
            string words = desk.Choice.Units == UnitSystem.Metric
                ? desk.Choice.Say.Say("paper.profile.scalesMetric", ("along", PaperSay.Number(72 / 0.0254 / scene.UnitsPerMetre, "#,0.#")), ("times", times))
                : desk.Choice.Say.Say("paper.profile.scales", ("along", PaperSay.Number(72 / scene.UnitsPerMetre / Foot, "#,0.#") + " ft"), ("times", times));
            blocks.Add(new PaperBlock.Drawing(scene, words));
        }

        return desk.Sheet(desk.Choice.Say.Say(exaggerated ? "paper.profile" : "paper.elevation", ("line", desk.Say.Line(planned))), $"{(exaggerated ? "profile" : "elevation")} {planned.Id}") with { Format = format, Blocks = blocks };
    }
}
