using System.Text;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Field.Tests.Merging;

/// <summary>Two people on one job, who hand each other files.</summary>
public sealed class MergeTests
{
    private static Job Tall(double feet, Job? job = null) => (job ?? Yard.Job) is var j ? j with { Specs = [j.Specs[0] with { Height = Length.FromFeet(feet) }] } : null!;

    private static Job Named(string name, Job? job = null) => (job ?? Yard.Job) with { Name = name };

    private static Job WithGate(double feet, Job? job = null) => (job ?? Yard.Job) with
    {
        Gates = [new() { Id = new("g"), Leg = new("leg"), Kind = Gate.Walk, NearFace = Length.FromFeet(20), Opening = Length.FromFeet(feet) }],
    };

    private static SharedJob By(string device, Job job, SharedJob from, long number = 1) => from.Record(job, new(device, number), 1000, device);

    private static SharedJob Start => SharedJob.Begin(Yard.Job);

    [Fact]
    public void AJobComesBackFromItsFields()
    {
        var shared = SharedJob.Begin(WithGate(4));
        Assert.Equal(JobFile.Write(WithGate(4)), JobFile.Write(shared.Head.Job!));
        Assert.Contains(shared.Fields, f => f.Key == "gates/@id=g/leg+nearFace");
        Assert.Contains(shared.Fields, f => f.Key == "lines/@id=main/vertices/@id=b/east+north");
    }

    [Fact]
    public void DifferentFieldsComeTogether()
    {
        var both = By("a", Tall(8), Start).Merge(By("b", Named("west", WithGate(4)), Start));
        Assert.Empty(both.Conflicts);
        Assert.Equal((8.0, "west", 4.0), (both.Head.Job!.Specs[0].Height.Feet, both.Head.Job.Name, both.Head.Job.Gates[0].Opening.Feet));
    }

    [Fact]
    public void OneFieldTwiceIsAConflictThatKeepsBothUntilAPersonSettlesIt()
    {
        var (a, b) = (By("a", Tall(8), Start), By("b", Tall(10), Start));
        var both = a.Merge(b);
        Assert.Equal(both.Revision, b.Merge(a).Revision);
        var conflict = Assert.Single(both.Conflicts);
        Assert.Equal(("specs/@id=fence/height", "1.8288", "2.4384"), (conflict.Path, conflict.Base, conflict.Stands));
        Assert.Equal(["3.048"], conflict.Others);
        var settled = both.Record(both.Head.Job!, new("b", 2), 2000, "b", conflict.Settle("3.048"));
        Assert.Empty(settled.Conflicts);
        Assert.Equal(10, settled.Head.Job!.Specs[0].Height.Feet, 9);
        Assert.Equal(settled.Revision, settled.Merge(a).Merge(b).Revision);
    }

    [Fact]
    public void AValueThatCameLaterStaysOpenAfterAConflictIsSettled()
    {
        var (a, b, c) = (By("a", Tall(8), Start), By("b", Tall(10), Start), By("c", Tall(12), Start));
        var both = a.Merge(b);
        var seen = both.Conflicts[0];
        var settled = both.Record(both.Head.Job!, new("a", 2), 2000, "a", seen.Settle(seen.Stands));
        Assert.Equal(["3.6576"], Assert.Single(settled.Merge(c).Conflicts).Others);
    }

    [Fact]
    public void WhatGoesOnFromAKeptValueTakesItsPlace()
    {
        var b = By("b", Tall(10), Start);
        Assert.Equal(["3.6576"], Assert.Single(By("a", Tall(8), Start).Merge(By("b", Tall(12), b, 2)).Conflicts).Others);
    }

    [Fact]
    public void AGateTakenOutAgainstOneThatWasChangedIsAskedAboutAndCanBeHadBack()
    {
        var start = SharedJob.Begin(WithGate(4));
        var both = By("a", WithGate(4) with { Gates = [] }, start).Merge(By("b", WithGate(5), start));
        var conflict = Assert.Single(both.Conflicts, c => c.Path == "gates/@id=g");
        Assert.Empty(both.Head.Job!.Gates);
        var back = both.Record(both.Head.Job!, new("a", 2), 2000, "a", conflict.Settle(JobFlat.There));
        Assert.Equal(5, back.Head.Job!.Gates[0].Opening.Feet, 9);
        Assert.Empty(back.Conflicts);
        var other = By("a", WithGate(5), start).Merge(By("b", WithGate(4) with { Gates = [] }, start));
        Assert.Single(other.Head.Job!.Gates);
        Assert.Equal([null], Assert.Single(other.Conflicts).Others);
    }

    [Fact]
    public void AVertexMovesInOnePiece()
    {
        Job Moved(double east) => Yard.Job with { Lines = [Yard.Job.Lines[0] with { Vertices = [.. Yard.Job.Lines[0].Vertices.Select(v => v.Id.Value == "b" ? v with { East = Length.FromFeet(east) } : v)] }] };
        Assert.Equal("lines/@id=main/vertices/@id=b/east+north", Assert.Single(By("a", Moved(1), Start).Merge(By("b", Moved(2), Start)).Conflicts).Path);
    }

    [Fact]
    public void TheSameFileTenTimesIsTheFileOnce()
    {
        var file = ExchangeFile.Write(new(Yard.Job.Id, By("a", Tall(8), Start), [Yard.Entry("a", 1, 1)]));
        var shared = By("b", Named("west"), Start);
        var once = shared.Merge(ExchangeFile.Read(file).Exchange!.Shared);
        var ten = Enumerable.Range(0, 10).Aggregate(shared, (s, _) => s.Merge(ExchangeFile.Read(file).Exchange!.Shared));
        Assert.Equal((once.Revision, once.Count), (ten.Revision, ten.Count));
        Assert.Equal(file, ExchangeFile.Write(ExchangeFile.Read(file).Exchange!));
    }

    /// <summary>Two people opened copies of a file that were already unlike: what only one has is there, where they differ both are asked.</summary>
    [Fact]
    public void TwoBeginningsComeTogetherTheSameForBothAndNothingIsLost()
    {
        var (a, b) = (SharedJob.Begin(Named("east")), SharedJob.Begin(Named("west", WithGate(4))));
        Assert.Equal(a.Merge(b).Revision, b.Merge(a).Revision);
        Assert.Single(a.Merge(b).Head.Job!.Gates);
        var conflict = Assert.Single(a.Merge(b).Conflicts);
        Assert.Equal(["\"east\"", "\"west\""], conflict.Others.Append(conflict.Stands).Order(StringComparer.Ordinal));
    }

    /// <summary>Somebody opened the job as another had saved it after an edit: that edit is known, there is nothing to ask.</summary>
    [Fact]
    public void ACopyTakenLaterIsNoConflict()
    {
        var a = By("a", Named("west", Tall(8)), Start);
        var b = By("b", WithGate(4, a.Head.Job), SharedJob.Begin(a.Head.Job!));
        var both = b.Merge(a);
        Assert.Empty(both.Conflicts);
        Assert.Equal(("west", 8.0, 1), (both.Head.Job!.Name, Math.Round(both.Head.Job.Specs[0].Height.Feet, 9), both.Head.Job.Gates.Count));
    }

    [Fact]
    public void ThereIsOneOutcomeInWhateverOrderFilesCome() => Gen.Select(Gen.Int[0, 5].List[1, 12], Gen.Int[0, 1000]).Always((edits, seed) =>
    {
        SharedJob[] people = [Start, Start, Start];
        foreach (var (edit, i) in edits.Select((e, i) => (e, i)))
        {
            var who = (edit + i) % 3;
            var job = people[who].Head.Job!;
            people[who] = By($"d{who}", edit switch { 0 => Tall(5 + i, job), 1 => Named($"n{i}", job), 2 => WithGate(3 + i, job), 3 => job with { Gates = [] }, 4 => Tall(6, job), _ => Named("", job) }, people[who], i + 1);
            if ((seed >> i) % 3 == 0) people[(who + 1) % 3] = people[(who + 1) % 3].Merge(people[who]);
        }
        var left = people[0].Merge(people[1]).Merge(people[2]);
        var right = people[2].Merge(people[0].Merge(people[1])).Merge(people[2]);
        Assert.Equal(left.Revision, right.Revision);
        Assert.Equal(Told(left), Told(right));
        Assert.NotNull(left.Head.Job);
    }, iter: 150);

    /// <summary>Four people who know nothing of each other each do one thing: every one of them finds it in the job, or among what is asked.</summary>
    [Fact]
    public void NobodysWorkIsLost() => Gen.Select(Gen.Int[0, 9].Array[4], Gen.Int[1, 20].Array[4]).Always((edits, sizes) =>
    {
        var root = SharedJob.Begin(Barbed(3, "left", WithGate(4)));
        SharedJob[] people = [.. edits.Select((edit, i) => By($"d{i}", Done(edit, sizes[i], root.Head.Job!), root))];
        var all = people.Reverse().Aggregate((a, b) => a.Merge(b));
        Assert.Equal(all.Revision, people.Aggregate((a, b) => a.Merge(b)).Revision);
        Assert.NotNull(all.Head.Job);
        var fields = all.Fields.ToDictionary(StringComparer.Ordinal);
        var asked = all.Conflicts.ToDictionary(c => c.Path, StringComparer.Ordinal);
        bool Kept(string path, string? value) => fields.GetValueOrDefault(path) == value || asked.TryGetValue(path, out var c) && c.Others.Contains(value);
        foreach (var field in all.Changes.SelectMany(c => c.Fields))
        {
            var inGone = asked.Keys.Any(k => field.Path.StartsWith(k + "/", StringComparison.Ordinal) && !fields.ContainsKey(k));
            Assert.True(Kept(field.Path, field.After) || inGone, $"{field.Path} {field.Before} -> {field.After} is lost");
            foreach (var (rest, value) in field.Added) Assert.True(Kept($"{field.Path}/{rest}", value) || inGone, $"{field.Path}/{rest} {value} is lost");
        }
    }, iter: 300);

    private static Job Done(int edit, int size, Job job) => edit switch
    {
        0 => Tall(size, job),
        1 => Named($"n{size}", job),
        2 => WithGate(size, job),
        3 => job with { Gates = [] },
        4 => Bare(job),
        5 => Barbed(size, size % 2 == 0 ? "left" : "right", job),
        6 => job with { Lines = [] },
        7 => job with { Lines = [job.Lines[0] with { Vertices = [.. job.Lines[0].Vertices, new() { Id = new("c"), Order = new("3"), East = Length.FromFeet(size), North = Length.FromFeet(100) }] }] },
        8 => job with { Gates = [.. job.Gates, new() { Id = new("h"), Leg = new("leg"), Kind = Gate.Walk, NearFace = Length.FromFeet(50 + size), Opening = Length.FromFeet(4) }] },
        _ => job with { Lines = [job.Lines[0] with { Vertices = [.. job.Lines[0].Vertices.Select(v => v.Leg is { } leg ? v with { Leg = leg with { Grade = new(size / 100.0) } } : v)] }] },
    };

    [Theory]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":3,\"roots\":[]}", "version", "newer program")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":1,\"roots\":[]}", "version", "older program")]
    [InlineData("{\"format\":\"tautline-exchange\",\"roots\":[]}", "version", "does not say which version")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":2,\"mustUnderstand\":[\"drones\"]}", "mustUnderstand", "'drones' must be understood")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":2,\"job\":\"yard\",\"roots\":[{\"id\":\"yard\"},{\"id\":\"lot\"}]}", "roots", "a text of 'lot'")]
    [InlineData("{\"format\":\"something\",\"version\":1}", "format", "no file of one device")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":2,\"roots\":[{]}", "line 1", "cut off")]
    [InlineData("[]", "", "no object")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":2,\"roots\":[7]}", "roots", "no job")]
    public void AFileThatCannotBeTrustedIsRefusedInWords(string text, string where, string message)
    {
        var reading = ExchangeFile.Read(Encoding.UTF8.GetBytes(text));
        Assert.Null(reading.Exchange);
        Assert.Equal(where, reading.Faults[^1].Where);
        Assert.Contains(message, reading.Faults[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ADamagedEntryIsToldAndTheRestIsTaken()
    {
        var file = Encoding.UTF8.GetString(ExchangeFile.Write(new(Yard.Job.Id, By("a", Tall(8), Start), [Yard.Entry("a", 1, 1), Yard.Entry("a", 2, 2)])));
        var reading = ExchangeFile.Read(Encoding.UTF8.GetBytes(file.Replace("\"sequence\":2", "\"sequence\":0", StringComparison.Ordinal)));
        Assert.Equal("log[1]", Assert.Single(reading.Faults).Where);
        Assert.Single(reading.Exchange!.Log);
        Assert.Equal(1, reading.Exchange.Shared.Count);
    }

    [Fact]
    public void FieldsOfALaterProgramComeAlong()
    {
        var job = JobFile.Read(Encoding.UTF8.GetBytes("""{"id":"yard","specs":[],"lines":[],"drones":[{"id":"d1","rpm":5,"at":[1,2.50]}],"mood":{"now":"fair"}}""")).Job!;
        var both = By("a", job with { Name = "west" }, SharedJob.Begin(job)).Head.Job!;
        Assert.Equal("""[{"id":"d1","at":[1,2.5],"rpm":5}]""", both.Extra!["drones"].GetRawText().Replace(" ", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal));
        Assert.Equal("fair", both.Extra["mood"].GetProperty("now").GetString());
    }

    private static Job Barbed(int strands, string lean, Job? job = null) => (job ?? Yard.Job) is var j
        ? j with { Specs = [j.Specs[0] with { Barb = new() { Strands = strands, Lean = lean } }] } : null!;

    private static Job Bare(Job job) => job with { Specs = [job.Specs[0] with { Barb = null }] };

    /// <summary>One takes the barbed wire off, the other gives it another strand: no half of it is left, and both are asked.</summary>
    [Fact]
    public void APartIsTakenOffOrChangedAsOne()
    {
        var start = SharedJob.Begin(Barbed(3, "left"));
        var (off, changed) = (By("a", Bare(Barbed(3, "left")), start), By("b", Barbed(4, "left"), start));
        Assert.Null(off.Merge(changed).Head.Job!.Specs[0].Barb);
        var conflict = Assert.Single(changed.Merge(off).Conflicts);
        Assert.Equal(("specs/@id=fence/barb", (string?)null), (conflict.Path, conflict.Stands));
        var back = off.Merge(changed).Record(off.Merge(changed).Head.Job!, new("a", 2), 2000, "a", conflict.Settle(conflict.Others[0]));
        Assert.Equal(4, back.Head.Job!.Specs[0].Barb!.Strands);
        Assert.Empty(back.Conflicts);
        // Two kinds of it put on at once are two values of one field, and never a mixture.
        var two = By("a", Barbed(3, "left"), Start).Merge(By("b", Barbed(6, "both"), Start));
        Assert.Equal((3, "left"), (two.Head.Job!.Specs[0].Barb!.Strands, two.Head.Job.Specs[0].Barb!.Lean));
        Assert.Single(two.Conflicts);
    }

    [Fact]
    public void TwoPeopleWhoSettleOneThingDifferentlyAreAskedAgain()
    {
        var both = By("a", Tall(8), Start).Merge(By("b", Tall(10), Start));
        var open = both.Conflicts[0];
        SharedJob Settled(string who, string? value) => both.Record(both.Head.Job!, new(who, 2), 2000, who, open.Settle(value));
        var (stays, changes) = (Settled("a", open.Stands), Settled("b", open.Others[0]));
        foreach (var all in new[] { stays.Merge(changes), changes.Merge(stays) })
        {
            var again = Assert.Single(all.Conflicts);
            Assert.Equal(["2.4384", "3.048"], again.Others.Append(again.Stands).Order(StringComparer.Ordinal));
        }
        Assert.Empty(stays.Merge(Settled("c", open.Stands)).Conflicts);
        Assert.Empty(changes.Merge(Settled("c", open.Others[0])).Conflicts);
        var third = Settled("c", "3.6576");
        Assert.Equal(stays.Merge(changes).Merge(third).Revision, third.Merge(changes.Merge(stays)).Revision);
        var last = Assert.Single(stays.Merge(changes).Merge(third).Conflicts);
        Assert.Equal(["2.4384", "3.048", "3.6576"], last.Others.Append(last.Stands).Order(StringComparer.Ordinal));
    }

    /// <summary>A gate is taken out and put in again by one, and made wider by another who knows of neither.</summary>
    [Fact]
    public void WhatAnotherDidToAThingIsThereWhenItIsPutInAgain()
    {
        var start = SharedJob.Begin(WithGate(4));
        var outAndIn = By("a", WithGate(4), By("a", WithGate(4) with { Gates = [] }, start), 2);
        var wider = start.Record(WithGate(5), new("b", 1), 1000, "b");
        var both = outAndIn.Merge(wider);
        Assert.Equal(both.Revision, wider.Merge(outAndIn).Revision);
        Assert.Equal(4, both.Head.Job!.Gates[0].Opening.Feet, 9);
        var conflict = Assert.Single(both.Conflicts);
        Assert.Equal("gates/@id=g/opening", conflict.Path);
        Assert.Equal(["1.524"], conflict.Others);
        // What was put into it meanwhile comes along: a corner of a line that was taken out and put in again.
        Job Line(params Vertex[] more) => Yard.Job with { Lines = [Yard.Job.Lines[0] with { Vertices = [.. Yard.Job.Lines[0].Vertices, .. more] }] };
        var line = By("a", Line(), By("a", Yard.Job with { Lines = [] }, Start), 2);
        var corner = By("b", Line(new Vertex { Id = new("c"), Order = new("3"), East = Length.FromFeet(9), North = Length.FromFeet(100) }), Start);
        Assert.Equal(3, line.Merge(corner).Head.Job!.Lines[0].Vertices.Count);
        Assert.Empty(line.Merge(corner).Conflicts);
    }

    [Fact]
    public void ALegIsAThingOfItsOwn()
    {
        Job Leg(Func<Leg, Leg> change) => Yard.Job with { Lines = [Yard.Job.Lines[0] with { Vertices = [.. Yard.Job.Lines[0].Vertices.Select(v => v.Leg is { } leg ? v with { Leg = change(leg) } : v)] }] };
        var both = By("a", Leg(l => l with { Grade = new(0.05) }), Start).Merge(By("b", Leg(l => l with { Spec = new("fence") }), Start));
        Assert.Empty(both.Conflicts);
        Assert.Equal((0.05, "fence"), (both.Head.Job!.Lines[0].Vertices[0].Leg!.Grade.Ratio, both.Head.Job.Lines[0].Vertices[0].Leg!.Spec!.Value.Value));
        var gone = By("a", Leg(_ => null!), Start).Merge(By("b", Leg(l => l with { Grade = new(0.05) }), Start));
        Assert.NotNull(gone.Head.Job);
        Assert.Single(gone.Conflicts, c => c.Path == "lines/@id=main/vertices/@id=a/leg");
    }

    [Fact]
    public void TwoJobsAreNotJoined()
        => Assert.Contains("'lot' is another job", Assert.Throws<ArgumentException>(() => Start.Merge(SharedJob.Begin(Yard.Job with { Id = new("lot") }))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("\"after\":\"2.4384\"", "\"after\":\"{{\"", "is no JSON")]
    [InlineData("specs/@id=fence/height", "id", "cannot be changed")]
    [InlineData("specs/@id=fence/height", "specs/@id=fence/id", "cannot be changed")]
    [InlineData("specs/@id=fence/height", "specs//height", "no path of a field")]
    [InlineData("specs/@id=fence/height", "specs/@id=fence", "no value of its own")]
    [InlineData("specs/@id=fence/height", "gates/@id=g/leg+nearFace", "is no object")]
    [InlineData("\"tick\":1000", "\"tick\":-1", "below 0")]
    public void ADamagedChangeIsToldAndTheRestIsTaken(string text, string damaged, string message)
    {
        var file = Encoding.UTF8.GetString(ExchangeFile.Write(new(Yard.Job.Id, By("a", Tall(8), Start).Record(Named("west", Tall(8)), new("a", 2), 2000, "a"), [Yard.Entry("a", 1, 1)])));
        Assert.Contains(text, file, StringComparison.Ordinal);
        var reading = ExchangeFile.Read(Encoding.UTF8.GetBytes(file.Replace(text, damaged, StringComparison.Ordinal)));
        Assert.Contains(message, Assert.Single(reading.Faults).Message, StringComparison.Ordinal);
        Assert.Equal("changes[0]", reading.Faults[0].Where);
        Assert.Equal("west", reading.Exchange!.Shared.Head.Job!.Name);
        Assert.Single(reading.Exchange.Log);
    }

    /// <summary>What a later program writes at any place of the file goes through this one unharmed.</summary>
    [Fact]
    public void EveryFieldOfALaterProgramGoesThrough()
    {
        var entry = Yard.Entry("a", 1, 1, LogEntry.Work) with { Done = new() { Operation = "set", Count = 1 }, Place = new() { Leg = new("leg"), At = Length.FromFeet(10) } };
        var job = JobFile.Read(Encoding.UTF8.GetBytes("""{"id":"yard","specs":[{"id":"fence","height":1.8288,"lamps":{}}],"lines":[],"drones":[],"mood":{}}""")).Job!;
        var file = Encoding.UTF8.GetString(ExchangeFile.Write(new(job.Id, By("a", Named("west", job), SharedJob.Begin(job)), [entry])));
        var later = file.Replace("\"path\":\"name\"", "\"path\":\"name\",\"ink\":[1]", StringComparison.Ordinal)
            .Replace("\"person\":\"a\"", "\"person\":\"a\",\"hat\":{\"red\":true}", StringComparison.Ordinal)
            .Replace("\"leg\":\"leg\"", "\"leg\":\"leg\",\"floor\":2", StringComparison.Ordinal)
            .Replace("\"operation\":\"set\"", "\"operation\":\"set\",\"tool\":\"auger\"", StringComparison.Ordinal);
        later = later[..^1] + ",\"weatherMap\":{\"x\":1}}";
        var there = Encoding.UTF8.GetString(ExchangeFile.Write(ExchangeFile.Read(Encoding.UTF8.GetBytes(later)).Exchange!));
        Assert.All(["\"ink\":[1]", "\"hat\":{\"red\":true}", "\"floor\":2", "\"tool\":\"auger\"", "\"weatherMap\":{\"x\":1}"], word => Assert.Contains(word, there, StringComparison.Ordinal));
        Assert.Equal(there, Encoding.UTF8.GetString(ExchangeFile.Write(ExchangeFile.Read(Encoding.UTF8.GetBytes(there)).Exchange!)));
        var head = Encoding.UTF8.GetString(JobFile.Write(ExchangeFile.Read(Encoding.UTF8.GetBytes(later)).Exchange!.Shared.Head.Job!));
        Assert.All(["\"drones\": []", "\"mood\": {}", "\"lamps\": {}"], word => Assert.Contains(word, head, StringComparison.Ordinal));
        // Two devices that carry different words of it carry the same in the end.
        SharedJob Map(int x) => ExchangeFile.Read(Encoding.UTF8.GetBytes(later.Replace("{\"x\":1}", $"{{\"x\":{x}}}", StringComparison.Ordinal))).Exchange!.Shared;
        Assert.Equal(Map(2).Merge(Map(3)).Extra, Map(3).Merge(Map(2)).Extra);
    }

    [Fact]
    public void TwoEditsUnderOneNumberAreBothThereAndTold()
    {
        var both = By("a", Tall(8), Start).Merge(By("a", Named("west"), Start));
        Assert.Equal(new("a", 1), Assert.Single(both.NumbersTwice));
        Assert.Equal(("west", 8.0), (both.Head.Job!.Name, Math.Round(both.Head.Job.Specs[0].Height.Feet, 9)));
    }

    /// <summary>Empty lists that a job has by itself are no fields; should a new kind of list be added, it is named in <see cref="JobFlat"/>.</summary>
    [Fact]
    public void AnEmptyJobHasNoEmptyFields()
        => Assert.DoesNotContain(JobFlat.Of(new() { Id = new("x"), Specs = [new() { Id = new("s"), Height = Length.FromFeet(4) }], Lines = [new() { Id = new("l"), Spec = new("s"), Ground = new(), Fit = new() }] }), f => f.Value is "[]");

    [Fact]
    public void AConflictsPathNamesItsThingsAndFields()
    {
        Assert.Equal([("lines", "main"), ("vertices", "b")], JobFieldNames.Things("lines/@id=main/vertices/@id=b/east+north"));
        Assert.Equal(["east", "north"], JobFieldNames.Fields("lines/@id=main/vertices/@id=b/east+north"));
        Assert.Equal([("lines", "a/b"), ("vertices", "b"), ("legs", "")], JobFieldNames.Things("lines/@id=a~1b/vertices/@id=b/leg/grade"));
        Assert.Equal([("gates", "g")], JobFieldNames.Things("gates/@id=g"));
        Assert.Empty(JobFieldNames.Fields("gates/@id=g"));
        Assert.Empty(JobFieldNames.Things("name"));
    }

    /// <summary>Every length of a job is shown as one: a new field of this type is named in <see cref="JobFieldNames"/>.</summary>
    [Fact]
    public void TheNamesOfLengthsAreComplete()
    {
        HashSet<Type> seen = [];
        HashSet<string> lengths = new(StringComparer.Ordinal), slopes = new(StringComparer.Ordinal);
        void Look(Type type)
        {
            foreach (var inner in type.GetGenericArguments()) Look(inner);
            if (type.Assembly != typeof(Job).Assembly || type.Namespace != typeof(Job).Namespace || !seen.Add(type)) return;
            foreach (var property in type.GetProperties().Where(p => p.CanWrite && p.GetCustomAttributes(typeof(System.Text.Json.Serialization.JsonIgnoreAttribute), false).Length == 0))
            {
                var kind = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
                var name = System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(property.Name);
                if (kind == typeof(Length)) lengths.Add(name);
                else if (kind == typeof(Slope)) slopes.Add(name);
                else Look(kind);
            }
        }

        Look(typeof(Job));
        Assert.True(lengths.Count > 10);
        Assert.Subset(JobFieldNames.Lengths.ToHashSet(), lengths);
        Assert.Subset(JobFieldNames.Slopes.ToHashSet(), slopes);
    }

    private static string Told(SharedJob shared) => string.Join(';', shared.Conflicts.Select(c => $"{c.Path}|{c.Base}|{c.Stands}|{string.Join(',', c.Others)}"));
}
