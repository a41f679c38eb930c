using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Bench;

/// <summary>Long invented jobs: a line that turns every so often, a gate in every tenth leg, grades that change, no-dig stretches.</summary>
public static class LongJobs
{
    /// <param name="miles">Length of the line.</param>
    /// <param name="legFeet">Length of a leg.</param>
    public static Job Line(double miles, double legFeet = 440)
    {
        var legs = Math.Max(1, (int)Math.Round(miles * 5280 / legFeet));
        var keys = OrderKey.Spread(legs + 1);
        List<Vertex> vertices = new(legs + 1);
        List<Gate> gates = [];
        List<Obstacle> obstacles = [];
        var (east, north) = (0.0, 0.0);
        for (var i = 0; i <= legs; i++)
        {
            var grade = (i % 5) switch { 1 => 0.04, 3 => -0.06, _ => 0 };
            vertices.Add(new Vertex
            {
                Id = new($"v{i}"),
                Order = keys[i],
                East = Length.FromFeet(east),
                North = Length.FromFeet(north),
                Leg = i < legs ? new Leg { Id = new($"leg{i}"), Grade = new Slope(grade) } : null,
            });
            if (i < legs && i % 10 == 4)
                gates.Add(new Gate { Id = new($"gate{i}"), Leg = new($"leg{i}"), Kind = Gate.Double, NearFace = Length.FromFeet(100), Opening = Length.FromFeet(16) });
            if (i < legs && i % 4 == 2)
                obstacles.Add(new Obstacle { Id = new($"zone{i}"), Leg = new($"leg{i}"), Kind = Obstacle.NoDig, From = Length.FromFeet(201), To = Length.FromFeet(205) });
            if (i % 3 == 0) north += legFeet;
            else east += legFeet;
        }
        return new Job
        {
            Id = new("long"),
            Name = "long line",
            Specs = [new Spec { Id = new("fence"), Height = Length.FromFeet(6), Brace = "no" }],
            Lines = [new Line { Id = new("line"), Order = OrderKey.First, Spec = new("fence"), Vertices = vertices }],
            Gates = gates,
            Obstacles = obstacles,
        };
    }

    /// <summary>The same line over rolling ground with a shot at every foot: waves of 8 ft in 500, of 10 in in 65 and a roughness of half an inch.</summary>
    public static Job OverGround(double miles)
    {
        var job = Line(miles);
        var line = job.Lines[0];
        List<GroundShot> shots = [];
        var random = new Random(20_261_125);
        for (var leg = 0; leg < line.Vertices.Count - 1; leg++)
            for (var foot = 0; foot <= 440; foot++)
            {
                var at = leg * 440.0 + foot;
                var height = 400 + 8 * Math.Sin(at * 2 * Math.PI / 500) + 10 / 12.0 * Math.Sin(at * 2 * Math.PI / 65) + (foot is 0 or 440 ? 0 : random.NextDouble() / 24);
                shots.Add(new GroundShot { Leg = new($"leg{leg}"), At = Length.FromFeet(foot), Height = Length.FromFeet(height) });
            }
        return job with { Lines = [line with { Ground = new LineGround { Shots = shots } }] };
    }
}
