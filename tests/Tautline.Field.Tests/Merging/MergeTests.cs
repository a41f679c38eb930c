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
        var settled = both.Record(both.Head.Job!, new("b", 2), 2000, "b", new Resolution(conflict.Path, conflict.Stands, conflict.Others, "3.048"));
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
        var settled = both.Record(both.Head.Job!, new("a", 2), 2000, "a", new Resolution(seen.Path, seen.Stands, seen.Others, seen.Stands));
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
        var back = both.Record(both.Head.Job!, new("a", 2), 2000, "a", new Resolution(conflict.Path, conflict.Stands, conflict.Others, JobFlat.There));
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

    [Theory]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":2,\"roots\":[]}", "version", "newer program")]
    [InlineData("{\"format\":\"something\",\"version\":1}", "format", "no file of one device")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":1,\"roots\":[{]}", "line 1", "cut off")]
    [InlineData("[]", "", "no object")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":1,\"roots\":[7]}", "roots", "no job")]
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
        Assert.Equal("""[{"at":[1,2.5],"id":"d1","rpm":5}]""", both.Extra!["drones"].GetRawText().Replace(" ", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal));
        Assert.Equal("fair", both.Extra["mood"].GetProperty("now").GetString());
    }

    private static string Told(SharedJob shared) => string.Join(';', shared.Conflicts.Select(c => $"{c.Path}|{c.Base}|{c.Stands}|{string.Join(',', c.Others)}"));
}
