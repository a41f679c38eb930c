namespace Tautline.Engine.Site.Ground;

/// <summary>A piece of ground along a path, straight between two stations.</summary>
internal readonly record struct GroundSpan(double From, double To, double FromHeight, double ToHeight)
{
    /// <summary>The part within a range; nothing is left where it ends before it begins.</summary>
    public GroundSpan Within(double from, double to)
    {
        var (low, high) = (Math.Max(from, From), Math.Min(to, To));
        return new(low, high, At(low), At(high));
    }

    // Both ends come out as they stand.
    private double At(double station)
    {
        if (station == To) return ToHeight;
        return FromHeight + (ToHeight - FromHeight) * ((station - From) / (To - From));
    }
}

/// <summary>Strings pieces of ground together to a profile.</summary>
internal sealed class ProfileBuilder(StationRange range)
{
    /// <summary>What is narrower is no gap and what is lower no step, in metres: faces of a file that ought to meet miss each other by as much.</summary>
    private const double Smallest = 1e-6;

    private readonly List<ProfileStretch> stretches = [];
    private readonly List<StationRange> gaps = [];
    private List<ProfilePoint> points = [];

    /// <summary>Adds a piece; pieces come in order of their beginnings. What is already covered is left out.</summary>
    public void Add(GroundSpan span)
    {
        if (points.Count == 0 || span.From > points[^1].Station + Smallest) Begin(span);
        else if (span.To > points[^1].Station) Append(span.Within(points[^1].Station, span.To));
    }

    public GroundProfile Build()
    {
        Close();
        var last = stretches.Count == 0 ? range.From : stretches[^1].Range.To;
        if (range.To - last > Smallest || stretches.Count == 0) gaps.Add(new(last, range.To));
        return new(range, stretches, gaps);
    }

    private void Begin(GroundSpan span)
    {
        Close();
        var last = stretches.Count == 0 ? range.From : stretches[^1].Range.To;
        if (span.From - last > Smallest) gaps.Add(new(last, span.From));
        points = [new(span.From, span.FromHeight), new(span.To, span.ToHeight)];
    }

    private void Append(GroundSpan span)
    {
        if (Math.Abs(span.FromHeight - points[^1].Height) > Smallest) points.Add(new(span.From, span.FromHeight));
        points.Add(new(span.To, span.ToHeight));
    }

    private void Close()
    {
        if (points.Count > 0) stretches.Add(new(points));
        points = [];
    }
}
