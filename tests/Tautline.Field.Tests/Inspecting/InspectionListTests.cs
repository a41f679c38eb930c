using System.Text;
using Tautline.Engine.Catalog;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.Inspecting;

/// <summary>Tolerances against install_limits.csv, whose rows are named; and the log's payloads, old and new.</summary>
public sealed class InspectionListTests
{
    private const double Inch = 0.0254;

    private static CheckItem Item(string key) => InspectionList.OfRun(Yard.Plan().Now, 0, 0).Single(i => i.Key == key);

    /// <summary>Rows 'tolerance, line' and 'test, post rigidity' (UFGS, from memory), 'tolerance, post plumb' (MIL-HDBK-1013/10), 'bottom clearance, max 2 in' (MIL-HDBK-1013/1A), 'tension band spacing 15 in'.</summary>
    [Theory]
    [InlineData("line", 0.5 * Inch, 0.51 * Inch, Confidence.FromMemory)]
    [InlineData("rigid", 0.75 * Inch, 0.76 * Inch, Confidence.FromMemory)]
    [InlineData("plumb", 2, 2.01, Confidence.Published)]
    [InlineData("gap", 2 * Inch, 2.01 * Inch, Confidence.Published)]
    [InlineData("bands", 15 * Inch, 15.01 * Inch, Confidence.FromMemory)]
    public void ATolerancesEndPassesAndALittleMoreFails(string key, double passes, double fails, Confidence confidence)
    {
        Assert.True(Item(key).Passes(passes));
        Assert.False(Item(key).Passes(fails));
        Assert.Equal(confidence, Item(key).Most!.From.Confidence);
    }

    /// <summary>A 6-ft fence: 24 in and 3 in for each foot over 4 make a hole of 30 in (ASTM F567-07, 5.1). Shallower fails, deeper passes.</summary>
    [Fact]
    public void AHoleIsJudgedByThePlansDepth()
    {
        var hole = InspectionList.OfPost(Item("hole"), Yard.Plan().Now.Lines[0].Posts[3]);
        Assert.True(hole.Passes(30 * Inch));
        Assert.True(hole.Passes(34 * Inch));
        Assert.False(hole.Passes(29 * Inch));
    }

    [Fact]
    public void AnEntryOfAnOlderProgramIsReadAndUnknownFieldsAreKept()
    {
        var old = LogJson.Read("""{"device":"a","sequence":1,"tick":1,"at":1,"kind":"check","found":{"item":"plumb","passed":true,"later":7}}"""u8, out string fault);
        Assert.Equal("", fault);
        Assert.Equal(("plumb", true, null), (old!.Found!.Item, old.Found.Passed, old.Found.Of));
        Assert.Contains("\"later\":7", Encoding.UTF8.GetString(LogJson.Write(old)), StringComparison.Ordinal);
        Assert.True(LogJson.Read("""{"device":"a","sequence":2,"tick":2,"at":2,"kind":"punch","mended":true}"""u8, out _)!.Mended);
        var moved = LogJson.Read("""{"device":"a","sequence":3,"tick":3,"at":3,"kind":"punch","punched":{"of":{"device":"a","sequence":2},"state":"accepted"}}"""u8, out _);
        Assert.Equal((new LogKey("a", 2), "accepted"), (moved!.Punched!.Of!.Value, moved.Punched.State));
    }
}
