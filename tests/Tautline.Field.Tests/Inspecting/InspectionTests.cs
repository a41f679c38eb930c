using CsCheck;
using Tautline.Engine.Plans;
using Tautline.Field.Building;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.Inspecting;

/// <summary>What was looked at, what is to be put right, who signed. The yard has one run of eleven posts; a gate stands in <see cref="Yard.GateFirst"/>.</summary>
public sealed class InspectionTests
{
    private const double Inch = 0.0254;

    private static readonly Plan plan = Yard.Plan().Now;

    private static LogEntry Check(long sequence, string key, double? measured = null, bool passed = true, int? post = null, string device = "a", Plan? on = null)
    {
        var basis = on ?? plan;
        var item = InspectionList.Of(basis.Basis.Rules).Single(i => i.Key == key);
        item = (item.Subject == CheckSubject.Gate ? InspectionList.OfGate(basis, 0, 0) : InspectionList.OfRun(basis, 0, 0)).Single(i => i.Key == key);
        var (found, place) = CheckMarking.Of(basis, item, 0, 0, post, measured, passed);
        return Yard.Entry(device, sequence, sequence, LogEntry.Check) with { Found = found, Place = place };
    }

    private static LogEntry Moved(long sequence, LogEntry of, string state) => Yard.Entry("a", sequence, sequence, LogEntry.Punch) with { Punched = new() { Of = of.Key, State = state } };

    private static LogEntry Signed(long sequence, InspectionStage stage)
        => Yard.Entry("a", sequence, sequence, LogEntry.Check) with { Found = new() { Item = Checked.SignOff, Passed = true, Stage = Inspection.Name(stage), By = "R. Ash" } };

    private static Inspection Of(params LogEntry[] entries) => Inspection.Of(plan, LogState.Of(entries));

    private static CheckRow Row(Inspection inspection, string key) => inspection.Stages.SelectMany(s => s.Rows).Single(r => r.Item.Key == key);

    [Fact]
    public void NothingIsMadeBeforeSomebodyLooks()
    {
        var none = Of();
        Assert.All(none.Stages.SelectMany(s => s.Rows), r => Assert.Equal(CheckVerdict.Open, r.Verdict));
        Assert.Equal((false, 0), (none[InspectionStage.Posts].MaySign, none.Waiting));
        // A yard without a gate has no check to make on gates.
        Assert.Empty(none[InspectionStage.Gates].Rows);
    }

    /// <summary>Out of plumb by more than 2 degrees fails (MIL-HDBK-1013/10, 14 May 1993, posts); put right and read again it passes, and its punch item is accepted.</summary>
    [Fact]
    public void AFailedReadingOpensAPunchItemAndAPassingOneAcceptsIt()
    {
        var bad = Check(1, "plumb", 3, post: 4);
        Assert.False(bad.Found!.Passed);
        var failed = Of(bad);
        Assert.Equal(CheckVerdict.Failed, Row(failed, "plumb").Verdict);
        Assert.Equal((PunchItem.Open, "plumb"), (Assert.Single(failed.Punch).State, failed.Punch[0].Item!.Key));
        Assert.Equal(PunchItem.Mended, Of(bad, Moved(2, bad, PunchItem.Mended)).Punch[0].State);
        // Mended, looked at, and still out.
        Assert.Equal(PunchItem.Open, Assert.Single(Of(bad, Moved(2, bad, PunchItem.Mended), Check(3, "plumb", 2.5, post: 4)).Punch).State);
        var good = Of(bad, Moved(2, bad, PunchItem.Mended), Check(3, "plumb", 1, post: 4));
        Assert.True(Assert.Single(good.Punch).Accepted);
        // One post of ten says nothing of the others.
        Assert.Equal((CheckVerdict.Open, 1), (Row(good, "plumb").Verdict, Row(good, "plumb").Posts.Count));
        // Out again later: another item.
        Assert.Equal([true, false], Of(bad, Check(2, "plumb", 1, post: 4), Check(3, "plumb", 4, post: 4)).Punch.Select(p => p.Accepted));
    }

    [Fact]
    public void AWholeRunIsJudgedByItsWorstPostAndALaterLookTakesThePlaceOfThePosts()
    {
        Assert.Equal(CheckVerdict.Failed, Row(Of(Check(1, "plumb", 3, post: 4), Check(2, "plumb", 1, post: 5)), "plumb").Verdict);
        var whole = Of(Check(1, "plumb", 3, post: 4), Check(2, "plumb", 1.5));
        Assert.Equal(CheckVerdict.Passed, Row(whole, "plumb").Verdict);
        Assert.True(Assert.Single(whole.Punch).Accepted);
        Assert.Equal(CheckVerdict.Failed, Row(Of(Check(1, "plumb", 1.5), Check(2, "plumb", 3, post: 4)), "plumb").Verdict);
        Assert.Equal(CheckVerdict.Passed, Row(Of(Check(1, "plumb", 3), Check(2, "plumb", 1.5)), "plumb").Verdict);
        var posts = RunPosts.Of(plan.Lines[0])[0];
        Assert.Equal(CheckVerdict.Passed, Row(Of([.. posts.Select((p, i) => Check(i + 1, "plumb", 1, post: p))]), "plumb").Verdict);
    }

    /// <summary>A gap of 3 in where 2 in is the most (MIL-HDBK-1013/1A, bottom clearance): out by an inch.</summary>
    [Fact]
    public void ASignOffFallsWithTheNextFailedCheckOfItsStage()
    {
        var fabric = plan is var p ? InspectionList.OfRun(p, 0, 0).Where(i => i.Stage == InspectionStage.Fabric && !i.Optional).ToList() : [];
        List<LogEntry> made = [.. fabric.Select((item, i) => Check(i + 1, item.Key))];
        var stage = Of([.. made])[InspectionStage.Fabric];
        Assert.Equal((0, 0, true), (stage.Failed, stage.Open, stage.MaySign));
        var signed = Of([.. made, Signed(50, InspectionStage.Fabric)]);
        Assert.Equal("R. Ash", signed[InspectionStage.Fabric].Signed!.Found!.By);
        Assert.Null(signed[InspectionStage.Posts].Signed);
        Assert.Null(Of([.. made, Signed(50, InspectionStage.Fabric), Check(51, "gap", 3 * Inch)])[InspectionStage.Fabric].Signed);
        Assert.NotNull(Of([.. made, Signed(50, InspectionStage.Fabric), Check(51, "plumb", 9)])[InspectionStage.Fabric].Signed);
        Assert.NotNull(Of([.. made, Check(49, "gap", 3 * Inch), Check(50, "gap", 1 * Inch), Signed(51, InspectionStage.Fabric)])[InspectionStage.Fabric].Signed);
    }

    [Fact]
    public void TheWholeIsNotFinishedWhileAPunchItemWaits()
    {
        List<LogEntry> made = [.. InspectionList.OfRun(plan, 0, 0).Where(i => i.Stage == InspectionStage.Finished).Select((item, i) => Check(i + 1, item.Key))];
        var own = Yard.Entry("a", 20, 20, LogEntry.Punch) with { Text = "cap missing", Punched = new() { State = PunchItem.Open } };
        Assert.True(Of([.. made])[InspectionStage.Finished].MaySign);
        Assert.False(Of([.. made, own])[InspectionStage.Finished].MaySign);
        Assert.False(Of([.. made, own, Moved(21, own, PunchItem.Mended)])[InspectionStage.Finished].MaySign);
        Assert.True(Of([.. made, own, Moved(21, own, PunchItem.Accepted)])[InspectionStage.Finished].MaySign);
        Assert.False(Of([.. made, own, Moved(21, own, PunchItem.Accepted), Moved(22, own, "in doubt")])[InspectionStage.Finished].MaySign);
    }

    [Fact]
    public void WhatIsTakenBackIsGone()
    {
        var bad = Check(1, "plumb", 3, post: 4);
        var back = Yard.Entry("a", 2, 2, LogEntry.Check) with { Supersedes = bad.Key, TakesBack = true };
        Assert.Empty(Of(bad, back).Punch);
        Assert.Equal(CheckVerdict.Open, Row(Of(bad, back), "plumb").Verdict);
    }

    [Fact]
    public void AGateIsLookedAtByItself()
    {
        var with = Yard.Plan(Yard.GateFirst).Now;
        var inspection = Inspection.Of(with, LogState.Of([Check(1, "gateOpening", 4 * 0.3048 + 0.6 * Inch, on: with)]));
        var row = inspection[InspectionStage.Gates].Rows.Single(r => r.Item.Key == "gateOpening");
        Assert.Equal(CheckVerdict.Failed, row.Verdict);
        Assert.Equal(CheckVerdict.Passed, Inspection.Of(with, LogState.Of([Check(1, "gateOpening", 4 * 0.3048 + 0.4 * Inch, on: with)]))[InspectionStage.Gates].Rows.Single(r => r.Item.Key == "gateOpening").Verdict);
    }

    [Fact]
    public void ACheckOfAPlaceThatIsGoneIsKeptAndTold()
    {
        var gone = Check(1, "plumb", 3, post: 4) with { Place = new() { Leg = new("no leg"), At = default } };
        var unknown = Check(2, "plumb") with { Found = new() { Item = "hum", Passed = true, Of = Inspection.WholeRun } };
        Assert.Equal([1L, 2L], Of(gone, unknown).Astray.Select(e => e.Sequence));
        Assert.Empty(Of(gone, unknown).Punch);
    }

    /// <summary>Two devices, in any order, any entry twice: one outcome.</summary>
    [Fact]
    public void TheOrderEntriesComeInDoesNotMatter() => Gen.Select(Gen.Int[0, 6].Array[1, 14], Gen.Int[0, 1_000_000]).Always((kinds, seed) =>
    {
        List<LogEntry> entries = [];
        for (var i = 0; i < kinds.Length; i++)
        {
            long number = i + 1;
            var device = (seed >> i) % 2 == 0 ? "a" : "b";
            entries.Add(kinds[i] switch
            {
                0 => Check(number, "plumb", 3, post: 2 + i % 3, device: device),
                1 => Check(number, "plumb", 1, post: 2 + i % 3, device: device),
                2 => Check(number, "plumb", 1.5, device: device),
                3 => Check(number, "gap", 3 * Inch, device: device),
                4 when entries.Find(e => e.Found is { Passed: false }) is { } bad => Moved(number, bad, PunchItem.Mended) with { Device = device },
                5 => Signed(number, InspectionStage.Posts) with { Device = device },
                _ when entries.Count > 0 => Yard.Entry(device, number, number, LogEntry.Check) with { Supersedes = entries[seed % entries.Count].Key, TakesBack = true },
                _ => Check(number, "crown", device: device),
            });
        }

        var random = new Random(seed);
        Assert.Equal(Told(Of([.. entries])), Told(Of([.. entries.Concat(entries).OrderBy(_ => random.Next())])));
        var inspection = Of([.. entries]);
        Assert.All(inspection.Punch.Where(p => p.Item is not null && !p.Accepted), p => Assert.Equal(CheckVerdict.Failed, Row(inspection, p.Item!.Key).Verdict));
    }, iter: 200);

    private static string Told(Inspection inspection) => string.Join(
        ';', inspection.Stages.Select(s => $"{s.Stage} {s.Passed} {s.Failed} {s.Open} {s.Signed?.Key}").Concat(inspection.Punch.OrderBy(p => p.Opened.Key).Select(p => $"{p.Opened.Key} {p.State} {p.Last.Key}")));
}
