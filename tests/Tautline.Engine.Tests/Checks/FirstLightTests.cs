using System.Globalization;
using Tautline.Engine.Plans;

namespace Tautline.Engine.Tests.Checks;

/// <summary>
/// The jobs counted by hand before the code, docs/checks/first-light.md: every row of first-light.csv that is a figure of a
/// planned job. Its sources stand in the last column; a number agrees to the digits the page prints.
/// </summary>
public sealed class FirstLightTests
{
    private static readonly Dictionary<string, Plan> plans = new()
    {
        ["A"] = Some.Plan(Some.StraightHundred()),
        ["B"] = Some.Plan(Some.Yard()),
        ["C5"] = Some.Plan(Some.Steep()),
        ["C6"] = Some.Plan(Some.SlopedLot()),
    };

    /// <summary>Rows that state working steps or readings not used; the figures they lead to are rows of their own.</summary>
    private static readonly HashSet<string> workings =
    [
        "A/run 1 pickets not calibrated fewest", "A/run 1 pickets not calibrated most", "A/rail tie spacing in diamonds",
        "B/full rail sticks", "B/rail end pieces", "B/rail sticks for end pieces", "B/rail left over in end-piece sticks",
        "B/rail left over total", "C5/bay if 15", "C5/square roll centre to centre", "C6/rail end pieces",
    ];

    public static TheoryData<string, string, string> Rows()
    {
        var rows = new TheoryData<string, string, string>();
        foreach (var row in Csv().Where(r => plans.ContainsKey(r[0]) && !workings.Contains($"{r[0]}/{r[1]}"))) rows.Add(row[0], row[1], row[2]);
        return rows;
    }

    internal static IEnumerable<string[]> Csv()
        => File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Checks", "first-light.csv")).Skip(1).Select(l => l.Split(','));

    [Theory]
    [MemberData(nameof(Rows))]
    public void AgreesWithTheHandCount(string job, string item, string expected)
    {
        var found = new HandCount(plans[job]).Answer(item);
        Assert.True(found is not null, $"the test does not know the item '{item}'");
        Assert.True(Agrees(expected, found), $"{job}, {item}: by hand {expected}, planned {found}");
    }

    [Fact]
    public void AHandCountThatDiffersIsNoticed()
    {
        Assert.False(Agrees("854", "855"));
        Assert.False(Agrees("1.28663", "1.28672"));
        Assert.False(Agrees("1 5 9", "1 5"));
        Assert.True(Agrees("1.28663", "1.286626"));
    }

    /// <summary>Words are equal; numbers agree to the last digit printed by hand.</summary>
    internal static bool Agrees(string expected, string found)
    {
        var (a, b) = (expected.Split(' '), found.Split(' '));
        return a.Length == b.Length && a.Zip(b).All(p => AgreesOne(p.First, p.Second));
    }

    private static bool AgreesOne(string expected, string found)
    {
        if (!decimal.TryParse(expected, CultureInfo.InvariantCulture, out var by)) return expected == found;
        var point = expected.IndexOf('.', StringComparison.Ordinal);
        var digits = point < 0 ? 0 : expected.Length - point - 1;
        var unit = 1m;
        for (var i = 0; i < digits; i++) unit /= 10;
        return decimal.TryParse(found, CultureInfo.InvariantCulture, out var planned) && Math.Abs(planned - by) <= (digits == 0 ? 0.00001m : unit * 0.6m);
    }
}
