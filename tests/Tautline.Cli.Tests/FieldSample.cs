using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Cli.Tests;

/// <summary>
/// Two invented days on an invented fence, as two phones write them down: what samples/field holds is made here. samples/README.md tells the story;
/// TAUTLINE_WRITE_SAMPLES=1 and <see cref="FieldSampleTests"/> write the file again.
/// </summary>
internal sealed class FieldSample
{
    public const string File = "cedar-lane-field.json";

    /// <summary>The foreman's phone.</summary>
    public const string First = "phone-c1";

    /// <summary>The one at the auger.</summary>
    public const string Second = "phone-k7";

    private static readonly TimeSpan zone = TimeSpan.FromHours(-6);
    private static readonly FenceCatalog catalog = FenceCatalog.BuiltIn();

    private readonly List<LogEntry> entries = [];
    private readonly Dictionary<string, long> numbers = new() { [First] = 0, [Second] = 0 };
    private SharedJob shared = SharedJob.Begin(Job);
    private DateTimeOffset now;

    public static Job Job { get; } = new()
    {
        Id = new("cedar-lane"),
        Name = "Cedar Lane side yard",
        Specs = [new() { Id = new("side-6ft"), Name = "6 ft side yard", Height = Length.FromFeet(6), LinePost = "2.375-sch40", TerminalPost = "2.875-sch40", RailSection = "1.660-sch40", Brace = "no" }],
        Calibrations = [new() { Spec = new("side-6ft"), TenPickets = Length.FromInches(14) }],
        Lines =
        [
            new()
            {
                Id = new("side"),
                Order = new("i"),
                Name = "side",
                Spec = new("side-6ft"),
                Vertices =
                [
                    new() { Id = new("side/v1"), Order = new("1"), East = Length.Zero, North = Length.Zero, Leg = new() { Id = new("side/leg1") } },
                    new() { Id = new("side/v2"), Order = new("2"), East = Length.Zero, North = Length.FromFeet(100), Leg = new() { Id = new("side/leg2") } },
                    new() { Id = new("side/v3"), Order = new("3"), East = Length.FromFeet(60), North = Length.FromFeet(100) },
                ],
            },
        ],
        Gates = [new() { Id = new("side-gate"), Leg = new("side/leg1"), Kind = Gate.Walk, NearFace = Length.FromFeet(56), Opening = Length.FromFeet(4) }],
    };

    public static Exchange Made { get; } = new FieldSample().Days();

    /// <summary>The part one phone wrote by itself.</summary>
    public static Exchange Of(string device)
    {
        var all = Made;
        return new(all.Job, SharedJob.Begin(Job).With([], all.Shared.Changes.Where(c => c.Key.Device == device)), [.. all.Log.Where(e => e.Device == device)]);
    }

    private Exchange Days()
    {
        Monday();
        Tuesday();
        return new(Job.Id, shared, entries);
    }

    private void Monday()
    {
        At(12, 6, 50);
        Write(First, e => e with { Kind = LogEntry.Ticket, Locate = new() { Number = "2610-0447", From = Day(12), To = Day(27) } });
        Write(First, e => e with { Kind = LogEntry.Talk, Text = "Buried lines", Held = new() { People = ["Ines", "Tomas"] } });
        Write(First, e => e with { Kind = LogEntry.Weather, Seen = new() { Sky = "clear", Wind = "breeze", Celsius = 9 } });
        At(12, 8, 10);
        Posts(First, Operations.Stake, 0, 7);
        At(12, 10, 30);
        Posts(Second, Operations.Drill, 0, 5);
        At(12, 11, 20);
        Write(First, e => e with
        {
            Kind = LogEntry.Change,
            Text = "Rock where the fourth post goes, jackhammer",
            Place = Marking.PlaceAt(Plan, 0, Plan.Lines[0].Posts[3].Station),
            Changed = new() { Quantity = 1.5m, Unit = "hour", UnitCents = 9_800, TotalCents = 14_700, Signer = "The owner", Strokes = [[120, 400, 240, 180, 380, 420], [420, 300, 700, 310]] },
        });
        At(12, 13, 40);
        Posts(Second, Operations.Set, 0, 3);
        // The rock would not go: eight inches ahead of where the plan has it.
        Write(Second, e => e with { Kind = LogEntry.Work, Done = new() { Operation = Operations.Set, Count = 1, Posts = [Marking.At(Plan, 0, 3, Plan.Lines[0].Posts[3].Station + Length.FromInches(8))] } });
        At(12, 16, 30);
        Write(First, e => e with { Kind = LogEntry.Hours, Worked = new() { Hours = 8, Operation = Operations.Stake } });
        Write(Second, e => e with { Kind = LogEntry.Hours, Worked = new() { Hours = 75, Operation = Operations.Drill } });
        // A point too few.
        Write(Second, e => e with { Kind = LogEntry.Hours, Worked = new() { Hours = 7.5, Operation = Operations.Drill }, Supersedes = entries[^1].Key });
    }

    private void Tuesday()
    {
        At(13, 7, 5);
        Write(First, e => e with { Kind = LogEntry.Weather, Seen = new() { Sky = "cloud", Wind = "calm", Celsius = 6.5 } });
        At(13, 7, 40);
        Slope(Second, 0.04);
        Write(Second, e => e with { Kind = LogEntry.Note, Text = "Measured the back leg with the level: it rises 4 in 100. The job has it now.", Place = Marking.PlaceAt(Plan, 0, Length.FromFeet(130)) });
        At(13, 9, 30);
        Posts(Second, Operations.Set, 0, 3);
        Write(Second, e => e with { Kind = LogEntry.Material, Used = new() { Called = "concrete", Quantity = 22, Unit = "bag" } });
        At(13, 11, 15);
        var (found, at) = CheckMarking.Of(Plan, InspectionList.OfRun(Plan, 0, 0).Single(i => i.Key == "plumb"), 0, 0, 1, 0.5, passed: false);
        Write(First, e => e with { Kind = LogEntry.Check, Text = "both ways", Place = at, Found = found });
        At(13, 14, 20);
        var row = Today.Of(Plan, LogState.Of(entries)).Rows.First(r => r is { Run: 0, Operation: Operations.Frame });
        var (framed, place) = Marking.Whole(Plan, row);
        Write(First, e => e with { Kind = LogEntry.Work, Done = framed, Place = place });
        At(13, 15, 30);
        Write(First, e => e with { Kind = LogEntry.Hours, Worked = new() { Hours = 6, Operation = Operations.Frame } });
        Write(Second, e => e with { Kind = LogEntry.Hours, Worked = new() { Hours = 8, Operation = Operations.Set } });
    }

    private Engine.Plans.Plan Plan => FieldPlan.Of(shared.Head.Job!, catalog, RuleSets.For(Job), LogState.Of(entries)).Now;

    private void Posts(string device, string operation, int run, int count)
        => Write(device, e => e with { Kind = LogEntry.Work, Done = Marking.Next(Plan, Today.Of(Plan, LogState.Of(entries)).Rows.First(r => r.Run == run && r.Operation == operation), count) });

    /// <summary>The job itself is edited on the phone: such an edit is no entry of the log.</summary>
    private void Slope(string device, double grade)
    {
        var line = Job.Lines[0];
        var vertices = line.Vertices.Select(v => v.Id.Value == "side/v2" ? v with { Leg = v.Leg! with { Grade = new(grade) } } : v);
        shared = shared.Record(Job with { Lines = [line with { Vertices = [.. vertices] }] }, new(device, ++numbers[device]), now.ToUnixTimeMilliseconds(), Person(device));
    }

    private void Write(string device, Func<LogEntry, LogEntry> write)
    {
        var clock = now.ToUnixTimeMilliseconds();
        var seen = entries.Select(e => e.Tick).Append(shared.Seen).Max();
        entries.Add(write(new() { Device = device, Sequence = ++numbers[device], Tick = Stamp.Next(clock, seen), At = clock, Person = Person(device), Kind = LogEntry.Note }));
        now += TimeSpan.FromMinutes(2);
    }

    private static string Person(string device) => device == First ? "Ines" : "Tomas";

    private void At(int day, int hour, int minute) => now = new(2026, 10, day, hour, minute, 0, zone);

    private static long Day(int day) => new DateTimeOffset(2026, 10, day, 0, 0, 0, zone).ToUnixTimeMilliseconds();
}
