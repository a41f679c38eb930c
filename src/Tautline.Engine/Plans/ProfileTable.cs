using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

/// <summary>One place of a line's profile. Heights over the job's datum.</summary>
/// <param name="Top">Of the fabric; nothing in an opening.</param>
/// <param name="Bottom">Of the fabric.</param>
/// <param name="Gap">Under the fabric; below zero where the ground stands higher.</param>
/// <param name="Post">Index of the post that stands here.</param>
public sealed record ProfileRow(Length Station, Length Ground, Length? Top, Length? Bottom, Length? Gap, int? Post);

/// <summary>The profile of a line over measured ground: a row at every corner of the ground and at every post.</summary>
public static class ProfileTable
{
    private const double Same = 1e-9;

    /// <summary>In order of station; no rows for a line that runs on the grades of its legs.</summary>
    public static IReadOnlyList<ProfileRow> Of(Plan plan, int line)
    {
        if (plan.Basis.Lines[line].Site.Chain.Ground is not { } ground) return [];
        var bays = plan.Lines[line].Runs.SelectMany(r => r.Fitted).OrderBy(b => b.From).ToList();
        var posts = plan.Lines[line].Posts;
        List<(double Station, double Height, int? Post)> places = [.. posts.Select((p, i) => (p.Station.Metres, p.GroundHeight!.Value.Metres, (int?)i))];
        places.AddRange(ground.Vertices.Select(v => (v.Station, v.Height, (int?)null)));
        List<ProfileRow> rows = [];
        foreach (var (station, height, post) in places.OrderBy(p => p.Station).ThenBy(p => p.Post is null))
        {
            if (post is null && rows.Count > 0 && Math.Abs(rows[^1].Station.Metres - station) < Same && Math.Abs(rows[^1].Ground.Metres - height) < Same) continue;
            rows.Add(Row(bays, station, height, post));
        }
        return rows;
    }

    private static ProfileRow Row(List<BayPlan> bays, double station, double height, int? post)
    {
        var (at, ground) = (new Length(station), new Length(height));
        if (BayAt(bays, station) is not { } bay) return new ProfileRow(at, ground, null, null, null, post);
        var share = (station - bay.From.Metres) / (bay.To - bay.From).Metres;
        var top = bay.Top + (bay.TopTo - bay.Top) * share;
        return new ProfileRow(at, ground, top, top - bay.Plumb, top - bay.Plumb - ground, post);
    }

    /// <summary>The bay over a station; of two that meet there the first.</summary>
    private static BayPlan? BayAt(List<BayPlan> bays, double station)
    {
        var (low, high) = (0, bays.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (bays[middle].To.Metres >= station - Same) high = middle;
            else low = middle + 1;
        }
        return bays.Count > 0 && bays[low].From.Metres <= station + Same && bays[low].To.Metres >= station - Same ? bays[low] : null;
    }
}
