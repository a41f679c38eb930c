using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Documents.Scenes;

/// <summary>The frame of a profile: stations below, heights at the left, in round steps of the job's own unit.</summary>
internal static class ProfileAxes
{
    private const double Foot = 0.3048;

    public static void Draw(ProfileFrame frame, ProfileSight sight, PlanWords words, LabelBoard labels, List<SceneItem> items)
    {
        double unit = words.Units == UnitSystem.Metric ? 1 : Foot;
        double rise = Step(sight.Type * 2.2 / (frame.UnitsPerMetre * frame.Exaggeration) / unit, 0.1) * unit;
        for (double at = Math.Ceiling(frame.Low / rise); at * rise <= frame.High; at++) Height(frame, sight, labels, items, at * rise, unit, rise);
        double along = Step(sight.Type * 6 / frame.UnitsPerMetre / unit, 1) * unit;
        for (double at = Math.Ceiling(frame.From / along); at * along <= frame.To; at++) Station(frame, sight, words, labels, items, at * along);
        items.Add(new SceneItem.Path(SceneRole.Axis, [frame.Left, frame.Top, frame.Left, frame.Bottom, frame.Right, frame.Bottom]));
    }

    /// <summary>The least of 1, 2, 5 times a power of ten that is no less than wanted, nor than the least.</summary>
    private static double Step(double wanted, double least)
    {
        double ten = least;
        while (true)
        {
            foreach (int times in (int[])[1, 2, 5])
                if (times * ten >= wanted) return times * ten;
            ten *= 10;
        }
    }

    private static void Height(ProfileFrame frame, ProfileSight sight, LabelBoard labels, List<SceneItem> items, double height, double unit, double step)
    {
        double y = frame.Y(height);
        items.Add(new SceneItem.Path(SceneRole.Grid, [frame.Left, y, frame.Right, y]));
        string text = PlanWords.Number(Math.Round(height / unit, 1) + 0.0, step / unit < 1 ? "#,0.0" : "#,0");
        if (labels.Place(SceneRole.Label, frame.Left - 4, y + (sight.Type * 0.35), text, sight.Type, TextAnchor.End) is { } label) items.Add(label);
    }

    private static void Station(ProfileFrame frame, ProfileSight sight, PlanWords words, LabelBoard labels, List<SceneItem> items, double station)
    {
        double x = frame.X(station);
        items.Add(new SceneItem.Path(SceneRole.Axis, [x, frame.Bottom, x, frame.Bottom + 4]));
        string text = StationText.Format(new Length(station), words.Units, 0);
        if (labels.Place(SceneRole.Label, x, frame.Bottom + 4 + (sight.Type * 1.1), text, sight.Type) is { } label) items.Add(label);
    }
}
