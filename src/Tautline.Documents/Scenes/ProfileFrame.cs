using Tautline.Engine.Picture;

namespace Tautline.Documents.Scenes;

/// <summary>From stations and heights to places on the drawing. What is drawn lies whole between the margins.</summary>
internal sealed record ProfileFrame(double Left, double Right, double Top, double Bottom, double From, double To, double Low, double UnitsPerMetre, double Exaggeration)
{
    private static readonly double[] steps = [10, 5, 2, 1];

    public double X(double station) => Left + ((station - From) * UnitsPerMetre);

    public double Y(double height) => Bottom - ((height - Low) * UnitsPerMetre * Exaggeration);

    /// <summary>The station under a place.</summary>
    public double Station(double x) => From + ((x - Left) / UnitsPerMetre);

    public double High => Low + ((Bottom - Top) / (UnitsPerMetre * Exaggeration));

    /// <summary>The width that stations have on a drawing.</summary>
    public static double Inner(double width, double type) => width - (type * (6.2 + 1.4));

    public static ProfileFrame Of(ProfilePicture picture, ProfileSight sight)
    {
        (double left, double right) = (sight.Type * 6.2, sight.Width - (sight.Type * 1.4));
        (double top, double bottom) = (sight.Type * 4.4, sight.Height - (sight.Type * 2.6));
        double length = Math.Max(0.5, sight.To - sight.From);
        (double low, double high) = Range(picture, sight.From, sight.From + length);
        double range = Math.Max(0.5, high - low);
        double units = Math.Max(1, right - left) / length;
        double fits = Math.Max(1, bottom - top) / (range * units);
        double times = sight.Exaggeration > 0 ? sight.Exaggeration : steps.FirstOrDefault(s => s <= fits, 1);
        // Ground too steep for its window is drawn smaller, never cut off.
        if (times > fits) units *= fits / times;
        double spare = ((bottom - top) / (units * times)) - range;
        return new(left, right, top, bottom, sight.From, sight.From + ((right - left) / units), low - (spare / 2), units, times);
    }

    private static (double Low, double High) Range(ProfilePicture picture, double from, double to)
    {
        (double low, double high) = (double.MaxValue, double.MinValue);
        foreach (ProfilePost post in picture.Posts.Where(p => p.Station >= from && p.Station <= to)) (low, high) = (Math.Min(low, post.Bottom), Math.Max(high, post.Top));
        foreach (double edge in (double[])[from, to])
        {
            double ground = ProfileStage.HeightAt(picture.Ground.Span, edge);
            (low, high) = (Math.Min(low, ground), Math.Max(high, ground));
        }

        ReadOnlySpan<double> all = picture.Ground.Span;
        for (int i = 0; i < all.Length; i += 2)
            if (all[i] >= from && all[i] <= to) (low, high) = (Math.Min(low, all[i + 1]), Math.Max(high, all[i + 1]));
        foreach (ProfileBay bay in picture.Bays.Where(b => b.To >= from && b.From <= to)) high = Math.Max(high, Math.Max(bay.Top, bay.TopTo));
        return low > high ? (0, 1) : (low, high);
    }
}
