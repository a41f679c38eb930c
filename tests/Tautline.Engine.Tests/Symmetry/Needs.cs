using Tautline.Engine.Plans;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>What a plan needs, whichever way its lines were walked.</summary>
internal static class Needs
{
    private const double Metre = 1e-6;
    private const double Part = 1e-6;

    /// <summary>Net quantities within a micrometre, counts exactly, weights to a millionth.</summary>
    public static void AssertSameNet(Plan one, Plan other)
    {
        Assert.Equal(one.Takeoff.Select(Key), other.Takeoff.Select(Key));
        foreach (var (a, b) in one.Takeoff.Zip(other.Takeoff))
        {
            Assert.True(Math.Abs(a.Net - b.Net) <= Tolerance(a), $"{Key(a)}: {a.Net} and {b.Net}");
            var (heavy, light) = (a.Mass?.Kilograms ?? 0, b.Mass?.Kilograms ?? 0);
            Assert.True(Math.Abs(heavy - light) <= Part * heavy, $"{Key(a)}: {heavy} and {light} kg");
        }
    }

    /// <summary>Posts by kind, and every bay of the job from the smallest, to two nanometres.</summary>
    public static void AssertSameLayout(Plan one, Plan other)
    {
        Assert.Equal(Kinds(one), Kinds(other));
        var (bays, others) = (Bays(one), Bays(other));
        Assert.Equal(bays.Count, others.Count);
        Assert.All(bays.Zip(others), b => Assert.InRange(b.First - b.Second, -2, 2));
    }

    /// <summary>The same is told, code by code.</summary>
    public static void AssertSameTold(Plan one, Plan other)
        => Assert.Equal(one.Problems.Select(p => $"{p.Code}").Order(StringComparer.Ordinal), other.Problems.Select(p => $"{p.Code}").Order(StringComparer.Ordinal));

    public static string Key(TakeoffLine line)
        => string.Join(' ', new[] { line.Part, line.Section, line.Size is { } size ? $"{size.Nanometres}" : null, line.Spec?.Value }.Where(w => w is not null));

    private static double Tolerance(TakeoffLine line) => line.NetUnit switch
    {
        QuantityUnit.Each => 0,
        QuantityUnit.Length => Metre,
        _ => Part * line.Net,
    };

    private static IEnumerable<string> Kinds(Plan plan)
        => plan.Lines.SelectMany(l => l.Posts).GroupBy(p => p.Kind).Select(g => $"{g.Key} {g.Count()}").Order(StringComparer.Ordinal);

    private static List<long> Bays(Plan plan)
        => [.. plan.Basis.Lines.SelectMany(l => l.Runs.SelectMany(r => r.Run.Stations.Zip(r.Run.Stations.Skip(1), (a, b) => l.Site.Chain.Along(b) - l.Site.Chain.Along(a)))).Order()];
}
