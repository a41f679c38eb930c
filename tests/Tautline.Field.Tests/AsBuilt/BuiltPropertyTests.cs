using System.Globalization;
using System.Text;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.AsBuilt;

/// <summary>What holds of every day's work, on small yards and on the samples of the repository.</summary>
public sealed class BuiltPropertyTests
{
    private static readonly Job[] yards = [Yard.Job, Yard.Closed(60), Yard.Sloped(83, 0.12), Yard.GateFirst, Yard.Shot(0, 4)];

    private static readonly FieldPlan[] plans = [.. yards.Select(y => Yard.Plan(y))];

    private static readonly Gen<(int Yard, (int Kind, int Where, int Count, double Along, double Right, int Other)[] Deeds)> days
        = Gen.Select(Gen.Int[0, 4], Gen.Select(Gen.Int[0, 7], Gen.Int[0, 40], Gen.Int[1, 6], Gen.Double[-4, 4], Gen.Double[-0.5, 0.5], Gen.Int[1, 20]).Array[0, 14]);

    private static LogEntry[] Log(int yard, (int Kind, int Where, int Count, double Along, double Right, int Other)[] deeds)
        => [.. deeds.Select((d, i) => Entry(plans[yard].AsDrawn, d, i + 1))];

    private static LogEntry Entry(Plan plan, (int Kind, int Where, int Count, double Along, double Right, int Other) deed, long n)
    {
        var line = plan.Lines[0];
        var post = deed.Where % line.Posts.Count;
        switch (deed.Kind)
        {
            case 0 or 1:
                IEnumerable<int> next = Enumerable.Range(post, Math.Min(deed.Count, line.Posts.Count - post));
                return Yard.Work(n, new() { Operation = deed.Kind == 0 ? Operations.Set : Operations.Drill, Count = deed.Count, Posts = [.. next.Select(p => Marking.AsPlanned(plan, 0, p))] });
            case 2 or 3:
                var moved = line.Posts[post].Station + Length.FromFeet(deed.Along);
                var at = Marking.At(plan, 0, post, Length.Max(Length.Zero, Length.Min(moved, line.Level)));
                return Yard.Work(n, new() { Operation = Operations.Set, Count = 1, Posts = [at with { East = at.East + Length.FromFeet(deed.Kind == 3 ? deed.Right : 0) }] });
            case 4 or 5:
                var rows = Today.Of(plan, LogState.Of([])).Rows.Where(r => !Operations.OfPosts(r.Operation)).ToList();
                var (done, place) = Marking.Whole(plan, rows[deed.Where % rows.Count]);
                return Yard.Work(n, done, place);
            default:
                var back = Yard.Entry("a", n, n, LogEntry.Work) with { Supersedes = new("a", 1 + deed.Other % n), TakesBack = deed.Kind == 6 };
                return deed.Kind == 6 ? back : back with { Done = new() { Operation = Operations.Set, Count = 1, Posts = [Marking.AsPlanned(plan, 0, post)] } };
        }
    }

    private static BuiltRecord Record(int yard, IEnumerable<LogEntry> entries)
    {
        var log = entries.ToArray();
        return BuiltRecord.Of(Yard.Plan(yards[yard], log), LogState.Of(log));
    }

    [Fact]
    public void NothingIsDoneMoreThanThereIs() => days.Always((yard, deeds) =>
    {
        var record = Record(yard, Log(yard, deeds));
        Assert.All(record.Progress.Runs.SelectMany(r => r.Operations), o => Assert.InRange(o.Done, 0, o.Of));
        Assert.All(record.Progress.Figures, f => Assert.InRange(f.Done, 0, f.Of));
        Assert.All(record.Progress.Figures, f => Assert.Equal(f.Done >= f.Of, f.Percent == 100));
        foreach (var line in record.Progress.Stations)
        {
            var ends = line.Stretches.SelectMany(s => new[] { s.From.Metres, s.To.Metres }).ToList();
            Assert.Equal(ends.Order(), ends);
            Assert.All(ends, e => Assert.InRange(e, 0, record.Now.Lines[line.Line].Level.Metres + 1e-9));
            Assert.All(line.Stretches.Zip(line.Stretches.Skip(1)), pair => Assert.True(pair.First.To < pair.Second.From));
        }
    });

    [Fact]
    public void EveryDrawnPostIsOnceBuiltToBuildOrLeftOut() => days.Always((yard, deeds) =>
    {
        var record = Record(yard, Log(yard, deeds));
        var built = record.Posts.Where(p => p.Drawn is not null).Select(p => new PostAt(p.Line, p.Drawn!.Value)).ToList();
        var all = record.Drawn.Lines.SelectMany((line, l) => line.Posts.Select((_, p) => new PostAt(l, p)));
        Assert.Equal(all, built.Concat(record.ToBuild).Concat(record.LeftOut).OrderBy(p => p.Line).ThenBy(p => p.Post));
        var farthest = record.Drawn.Basis.Rules.BayMax.Length / 2 + Length.FromMillimetres(1);
        Assert.All(record.Posts, p => Assert.True(Length.Abs(p.Along) <= farthest * 2 && Length.Abs(p.Off) < Standing.NearLine));
        // Of two posts that stand none is taken for a drawn post that is nearer to one the drawing was said not to have.
        foreach (var extra in record.Extra)
            foreach (var paired in record.Posts.Where(p => p.Drawn is not null && p.Line == extra.Line && p.Post.Line == extra.Post.Line && !p.OtherKind))
                Assert.True(Apart(record, paired.Post, paired) <= Apart(record, extra.Post, paired) + 1e-9);
    });

    private static double Apart(BuiltRecord record, PostDone post, StandingPost of)
    {
        var drawn = record.Drawn.Lines[of.Line].Posts[of.Drawn!.Value];
        return Math.Sqrt(Math.Pow((post.East - drawn.East).Metres, 2) + Math.Pow((post.North - drawn.North).Metres, 2));
    }

    [Fact]
    public void TheOrderOfTheEntriesAndHowOftenTheyComeDoNotMatter() => Gen.Select(days, Gen.Int[0, 1_000_000]).Always((day, seed) =>
    {
        var log = Log(day.Yard, day.Deeds);
        var random = new Random(seed);
        LogEntry[] other = [.. log.Concat(log.Take(3)).OrderBy(_ => random.Next())];
        Assert.Equal(Told(Record(day.Yard, log)), Told(Record(day.Yard, other)));
    });

    [Fact]
    public void WhereNothingIsBuiltNothingDiffersAndNothingIsDone()
    {
        foreach (var (job, _) in Samples().Concat(yards.Select(y => (y, ""))))
        {
            var record = BuiltRecord.Of(Yard.Plan(job), LogState.Of([]));
            Assert.True(record.AsDrawn);
            Assert.Empty(record.Posts);
            Assert.Equal(record.Drawn.Lines.Sum(l => l.Posts.Count), record.ToBuild.Count);
            Assert.All(record.Progress.Figures, f => Assert.Equal((0.0, 0), (f.Done, f.Percent)));
            Assert.All(record.Progress.Stations, s => Assert.Empty(s.Stretches));
        }
    }

    /// <summary>Corners shared by lines, curves, measured ground, gates of every kind, posts in no run: all as drawn is all done and nothing else.</summary>
    [Fact]
    public void AllBuiltAsDrawnIsAHundredPercentWithoutADifference()
    {
        foreach (var (job, name) in Samples().Concat(yards.Select(y => (y, y.Id.Value))))
        {
            var plan = Yard.Plan(job).AsDrawn;
            var log = All(plan);
            var record = BuiltRecord.Of(Yard.Plan(job, log), LogState.Of(log));
            Assert.True(record.AsDrawn, $"{name}: {string.Join("; ", record.Differences.Select(d => $"{d.Line}.{d.Drawn} {d.Along} {d.Off} {d.OtherKind}"))} {record.Lost.Count} {record.LeftOut.Count} {record.Takeoff.Count}");
            Assert.Empty(record.ToBuild);
            Assert.Equal(0, record.Progress.Apart);
            Assert.All(record.Progress.Figures, f => Assert.Equal((f.Of, 100), (f.Done, f.Percent)));
            Assert.All(record.Progress.Runs, r => Assert.True(r.Finished));
            Assert.All(record.Progress.Gates, g => Assert.True(g.Hung));
        }
    }

    /// <summary>A post of a curve pulled three quarters of an inch straight out from the centre stands so much off the line and nothing along it.</summary>
    [Fact]
    public void OutFromACurveIsOffTheLineAndNotAlongIt()
    {
        var pulled = 0;
        foreach (var (job, _) in Samples())
        {
            var plan = Yard.Plan(job).AsDrawn;
            for (var l = 0; l < plan.Lines.Count; l++)
                for (var p = 0; p < plan.Lines[l].Posts.Count; p++)
                {
                    var post = plan.Lines[l].Posts[p];
                    if (plan.Basis.Lines[l].Site.Chain.LegFrom(post.Station.Nanometres) is not { Curve: { } curve } leg || post.Station.Nanometres == leg.StartNm) continue;
                    var (x, y) = ((post.East - curve.Centre.East).Metres, (post.North - curve.Centre.North).Metres);
                    var longer = 1 + 0.75 * 0.0254 / Math.Sqrt(x * x + y * y);
                    var set = Marking.AsPlanned(plan, l, p) with { East = curve.Centre.East + new Length(x * longer), North = curve.Centre.North + new Length(y * longer) };
                    LogEntry[] log = [Yard.Work(1, new() { Operation = Operations.Set, Count = 1, Posts = [set] })];
                    var stands = Assert.Single(BuiltRecord.Of(plan, plan, LogState.Of(log)).Posts);
                    Assert.Equal((p, 0.0), (stands.Drawn, Math.Round(stands.Along.Inches, 6)));
                    Assert.Equal(curve.Side == Engine.Site.CurveSide.Left ? 0.75 : -0.75, stands.Off.Inches, 6);
                    pulled++;
                }
        }
        Assert.True(pulled > 10, $"only {pulled} posts of the samples stand on curves");
    }

    private static LogEntry[] All(Plan plan)
    {
        List<LogEntry> log = [];
        for (var l = 0; l < plan.Lines.Count; l++)
            log.Add(Yard.Work(log.Count + 1, new() { Operation = Operations.Set, Count = 1, Posts = [.. Enumerable.Range(0, plan.Lines[l].Posts.Count).Select(p => Marking.AsPlanned(plan, l, p))] }));
        foreach (var row in Today.Of(plan, LogState.Of([])).Rows.Where(r => !Operations.OfPosts(r.Operation)))
        {
            var (done, place) = Marking.Whole(plan, row);
            log.Add(Yard.Work(log.Count + 1, done, place));
        }
        return [.. log];
    }

    private static IEnumerable<(Job Job, string Name)> Samples()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "Tautline.slnx"))) root = root.Parent!;
        foreach (var file in Directory.GetFiles(Path.Combine(root.FullName, "samples"), "*.json").Order(StringComparer.Ordinal))
            yield return (JobFile.Read(File.ReadAllBytes(file)).Job!, Path.GetFileName(file));
    }

    /// <summary>All that a record says, as text.</summary>
    private static string Told(BuiltRecord record)
    {
        StringBuilder text = new();
        foreach (var p in record.Posts) text.Append(CultureInfo.InvariantCulture, $"{p.Entry.Key} {p.Line} {p.Station} {p.Off} {p.Drawn} {p.Along} {p.OtherKind}\n");
        foreach (var p in record.Lost) text.Append(CultureInfo.InvariantCulture, $"lost {p.Entry.Key} {p.Post.Number}\n");
        text.AppendJoin(',', record.ToBuild).AppendJoin(',', record.LeftOut).Append(PlanFile.Hash(record.Now));
        foreach (var r in record.Progress.Runs) text.AppendJoin(',', r.Operations);
        foreach (var s in record.Progress.Stations) text.Append(s.Operation).AppendJoin(',', s.Stretches);
        return text.AppendJoin(',', record.Progress.Figures).AppendJoin(',', record.Progress.Gates).AppendJoin(',', record.Takeoff).ToString();
    }
}
