using CsCheck;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.Log;

/// <summary>A log is a set: what stands of it does not hang on how its entries came.</summary>
public sealed class LogStateTests
{
    private static readonly Gen<List<LogEntry>> entries = Gen.Select(Gen.Int[0, 3], Gen.Long[1, 9], Gen.Long[0, 40], Gen.Int[0, 5], Gen.Int[0, 3], Gen.Bool)
        .Select((device, number, tick, old, of, back) => Yard.Entry($"d{device}", number, tick) with
        {
            Supersedes = old == 0 ? new LogKey($"d{of}", 1 + tick % 9) : null,
            TakesBack = old == 0 && back,
            Text = $"{tick}",
        }).List[0, 30];

    [Fact]
    public void OrderAndRepetitionDoNotMatter() => Gen.Select(entries, Gen.Int[0, 1000]).Always((set, seed) =>
    {
        var shuffled = set.Concat(set.Take(set.Count / 2)).OrderBy(e => (e.Tick * 7919 + e.Sequence * 31 + seed) % 101).ToList();
        Assert.Equal(Told(LogState.Of(set)), Told(LogState.Of(shuffled)));
    }, iter: 300);

    [Fact]
    public void ACorrectionTakesThePlaceOfWhatItCorrects()
    {
        var wrong = Yard.Entry("a", 1, 1) with { Text = "wrong" };
        var right = Yard.Entry("b", 1, 2) with { Text = "right", Supersedes = wrong.Key };
        Assert.Equal("right", Assert.Single(LogState.Of([wrong, right]).Standing).Text);
        Assert.Equal("right", Assert.Single(LogState.Of([right]).Standing).Text);
        Assert.Empty(LogState.Of([wrong, right, Yard.Entry("a", 2, 3) with { Supersedes = right.Key, TakesBack = true }]).Standing);
    }

    [Fact]
    public void TwoCorrectionsOfOneEntryBothStandAndAreTold()
    {
        var first = Yard.Entry("a", 1, 1);
        var state = LogState.Of([first, Yard.Entry("b", 1, 2) with { Supersedes = first.Key }, Yard.Entry("c", 1, 2) with { Supersedes = first.Key }]);
        Assert.Equal(2, state.Standing.Count);
        Assert.Equal([new LogFinding(LogFindingKind.CorrectedTwice, first.Key)], state.Findings);
    }

    /// <summary>As after a phone was put back from a copy: nothing is lost.</summary>
    [Fact]
    public void OneNumberWithTwoContentsKeepsBoth()
    {
        var state = LogState.Of([Yard.Entry("a", 1, 1) with { Text = "one" }, Yard.Entry("a", 1, 1) with { Text = "two" }]);
        Assert.Equal(2, state.Standing.Count);
        Assert.Equal(LogFindingKind.NumberTwice, Assert.Single(state.Findings).Kind);
    }

    [Fact]
    public void AnEntryOfALaterProgramIsKeptWordForWord()
    {
        var text = """{"device":"a","sequence":1,"tick":5,"at":5,"person":"Ana","kind":"drone","takesBack":false,"text":"","spin":{"rpm":12}}"""u8;
        var read = LogJson.Read(text, out _)!;
        Assert.Equal(text.ToArray(), LogJson.Write(read));
        Assert.Equal(LogFindingKind.UnknownKind, Assert.Single(LogState.Of([read]).Findings).Kind);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"device":"","sequence":1,"tick":1,"at":1,"kind":"note"}""")]
    [InlineData("""{"device":"a","sequence":0,"tick":1,"at":1,"kind":"note"}""")]
    [InlineData("""{"device":"a","sequence":1,"tick":1,"at":1,"kind":"note","place":{"leg":"x","at":"far"}}""")]
    [InlineData("""{"device":"a","sequence":1,"tick":1,"at":1,""")]
    public void WhatIsNoEntryIsToldAndNotTaken(string text)
    {
        Assert.Null(LogJson.Read(System.Text.Encoding.UTF8.GetBytes(text), out var fault));
        Assert.NotEmpty(fault);
    }

    /// <summary>A clock an hour behind writes after what it has seen all the same.</summary>
    [Fact]
    public void ALateClockStillOrdersBehindWhatItSaw()
    {
        Assert.Equal(3_600_001, Stamp.Next(0, 3_600_000));
        Assert.Equal(7_200_000, Stamp.Next(7_200_000, 3_600_000));
    }

    private static string Told(LogState state) => string.Join(';', state.Standing.Select(e => $"{e.Key} {e.Tick} {e.Text}")) + "|" + string.Join(';', state.Findings) + state.Seen;
}
