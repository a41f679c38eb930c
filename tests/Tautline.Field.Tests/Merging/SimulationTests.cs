using System.Globalization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Field.Tests.Merging;

/// <summary>
/// Five devices and two people in the office on one job, over lines that lose, double and disorder what is sent, with clocks up to an hour wrong. For a longer run by
/// hand set TAUTLINE_SIM to a number of operations.
/// </summary>
public sealed class SimulationTests
{
    private static readonly int operations = int.TryParse(Environment.GetEnvironmentVariable("TAUTLINE_SIM"), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 10_000;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [Trait("Category", "Slow")]
    public void AfterDeliveryAllHaveTheSame(int seed)
    {
        var world = new World(seed);
        for (var i = 0; i < operations; i++) world.Step();
        world.DeliverAll();
        var first = world.People[0];
        Assert.All(world.People, p =>
        {
            Assert.Equal(first.Shared.Revision, p.Shared.Revision);
            Assert.Equal(first.Told, p.Told);
            Assert.Equal(first.Log.Keys, p.Log.Keys);
            Assert.Equal(first.LogTexts, p.LogTexts);
            Assert.Superset(world.Entries, p.Log.Keys.ToHashSet());
            Assert.Superset(world.Changes, p.Shared.Changes.Select(c => c.Key).ToHashSet());
        });
        Assert.True(world.Entries.Count > operations / 3 && world.Changes.Count > operations / 8, "the run does too little");
        Assert.True(first.Shared.Conflicts.Count > 0 && world.Settled > 0, "nobody ever disagreed, or nobody settled it");
        Assert.NotNull(first.Shared.Head.Job);
        // Every value that was the last somebody gave is in the job, or asked about, or was gone on from by one who knew it.
        var said = first.Shared.Changes.SelectMany(c => c.Resolves).Count();
        Assert.True(said == world.Settled && world.SettledTwice > 0, "no two people ever settled one thing at once");
        Assert.True(first.Shared.Changes.Any(c => c.Fields.Any(f => f.Path.EndsWith("/barb", StringComparison.Ordinal) && f.After is null)), "no part was ever taken off");
    }

    private sealed class Person(int number, Job job, long skew)
    {
        public SharedJob Shared { get; set; } = SharedJob.Begin(job);

        public SortedDictionary<LogKey, LogEntry> Log { get; } = [];

        public string Name { get; } = number < 5 ? $"device {number}" : $"office {number}";

        public long Numbers { get; set; }

        public long Skew { get; } = skew;

        public string[] LogTexts => [.. Log.Values.Select(e => System.Text.Encoding.UTF8.GetString(LogJson.Write(e)))];

        public string Told => string.Join(';', Shared.Conflicts.Select(c => $"{c.Path}|{c.Base}|{c.Stands}|{string.Join(',', c.Others)}"));
    }

    private sealed class World(int seed)
    {
        private readonly Random random = new(seed);
        private readonly List<(int To, SharedJob Shared, LogEntry[] Log)> underWay = [];
        private long clock = 1_790_000_000_000;

        public Person[] People { get; } = [.. Enumerable.Range(0, 7).Select(i => new Person(i, Yard.Job, new Random(seed * 31 + i).Next(-3_600_000, 3_600_001)))];

        public HashSet<LogKey> Entries { get; } = [];

        public HashSet<LogKey> Changes { get; } = [];

        public int Settled { get; private set; }

        /// <summary>How often somebody settled what another had settled already, unseen.</summary>
        public int SettledTwice { get; private set; }

        private readonly HashSet<string> settledOnce = [];

        public void Step()
        {
            clock += random.Next(1, 60_000);
            var who = People[random.Next(7)];
            switch (random.Next(100))
            {
                case < 55: Write(who); break;
                case < 82: Edit(who); break;
                case < 86: Settle(who); break;
                case < 93: Send(who); break;
                default: Arrive(); break;
            }
        }

        /// <summary>Everybody hands everything to everybody, twice: what was lost on the way comes now.</summary>
        public void DeliverAll()
        {
            while (underWay.Count > 0) Arrive();
            for (var round = 0; round < 2; round++)
                foreach (var from in People)
                    for (var to = 0; to < 7; to++) Take(People[to], from.Shared, [.. from.Log.Values]);
        }

        private void Write(Person who)
        {
            LogKey? old = who.Log.Count > 0 && random.Next(8) == 0 ? who.Log.Keys.ElementAt(random.Next(Math.Min(40, who.Log.Count))) : null;
            var entry = Yard.Entry(who.Name, ++who.Numbers, Stamp.Next(clock + who.Skew, who.Log.Count == 0 ? 0 : who.Log.Values.Max(e => e.Tick))) with { Supersedes = old, Text = $"{random.Next()}" };
            who.Log.Add(entry.Key, entry);
            Entries.Add(entry.Key);
        }

        private void Edit(Person who)
        {
            var reading = who.Shared.Head;
            Assert.True(reading.Job is not null, string.Join("; ", reading.Problems.Select(p => $"{p.Place.Path} {p.Code} {string.Join(' ', p.Figures)}")) + string.Join("|", who.Shared.Fields.Where(f => f.Key.StartsWith("gates", StringComparison.Ordinal))));
            var next = who.Shared.Record(Edited(reading.Job!), new(who.Name, ++who.Numbers), clock + who.Skew, who.Name);
            if (!ReferenceEquals(next, who.Shared)) Changes.Add(new(who.Name, who.Numbers));
            who.Shared = next;
        }

        private Job Edited(Job job) => random.Next(8) switch
        {
            0 => job with { Name = $"name {random.Next(1000)}" },
            1 => job with { Specs = [job.Specs[0] with { Height = Length.FromFeet(random.Next(4, 13)) }] },
            2 => job with { Gates = [.. job.Gates.Where(g => g.Id.Value != $"g{random.Next(5)}")] },
            3 when $"g{random.Next(5)}" is var id && job.Gates.All(g => g.Id.Value != id) => job with { Gates = [.. job.Gates, GateOf(id)] },
            5 => job with { Specs = [job.Specs[0] with { Barb = random.Next(3) == 0 ? null : new() { Strands = random.Next(1, 7), Lean = random.Next(2) == 0 ? "left" : "right" } }] },
            6 => job with { Lines = [.. job.Lines.Select(l => l with { Vertices = [.. l.Vertices.Select(v => v.Leg is { } leg ? v with { Leg = leg with { Grade = new(random.Next(20) / 100.0) } } : v)] })] },
            4 => job with { Gates = [.. job.Gates.Select(g => random.Next(3) == 0 ? g with { Opening = Length.FromFeet(random.Next(3, 20)) } : g)] },
            _ => job with { Lines = [.. job.Lines.Select(l => l with { Vertices = [.. l.Vertices.Select(v => v with { East = Length.FromFeet(random.Next(10)) })] })] },
        };

        private Gate GateOf(string id) => new() { Id = new(id), Leg = new("leg"), Kind = Gate.Walk, NearFace = Length.FromFeet(random.Next(90)), Opening = Length.FromFeet(4) };

        private void Settle(Person who)
        {
            if (who.Shared.Conflicts is not { Count: > 0 } open) return;
            var one = open[random.Next(open.Count)];
            var value = random.Next(2) == 0 ? one.Stands : one.Others[random.Next(one.Others.Count)];
            var next = who.Shared.Record(who.Shared.Head.Job!, new(who.Name, ++who.Numbers), clock + who.Skew, who.Name, one.Settle(value));
            Changes.Add(new(who.Name, who.Numbers));
            (who.Shared, Settled) = (next, Settled + 1);
            if (!settledOnce.Add($"{one.Path}|{one.Stands}|{string.Join(',', one.Others)}")) SettledTwice++;
        }

        /// <summary>A quarter is lost, a quarter goes twice; what is under way arrives in any order.</summary>
        private void Send(Person who)
        {
            var to = random.Next(7);
            for (var copies = new[] { 0, 1, 1, 2 }[random.Next(4)]; copies > 0; copies--) underWay.Add((to, who.Shared, [.. who.Log.Values]));
        }

        private void Arrive()
        {
            if (underWay.Count == 0) return;
            var at = random.Next(underWay.Count);
            var (to, shared, log) = underWay[at];
            underWay.RemoveAt(at);
            if (random.Next(10) == 0 && ExchangeFile.Read(ExchangeFile.Write(new(Yard.Job.Id, shared, log))) is { Exchange: { } read, Faults.Count: 0 }) (shared, log) = (read.Shared, [.. read.Log]);
            Take(People[to], shared, log);
        }

        private static void Take(Person who, SharedJob shared, LogEntry[] log)
        {
            who.Shared = who.Shared.Merge(shared);
            foreach (var entry in log) who.Log.TryAdd(entry.Key, entry);
        }
    }
}
