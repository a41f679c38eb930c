using System.Text;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Jobs;

public sealed class JobFileTests
{
    private static string Text(Job job) => Encoding.UTF8.GetString(JobFile.Write(job));

    private static JobReading Read(string text) => JobFile.Read(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void ASavedJobPlansToTheSameHash()
    {
        var job = Some.Yard();
        var again = JobFile.Read(JobFile.Write(job)).Job!;
        Assert.Equal(PlanFile.Hash(Some.Plan(job)), PlanFile.Hash(Some.Plan(again)));
    }

    [Fact]
    public void UnknownFieldsAndKindsSurvive()
    {
        const string text = """
            { "format": "tautline-job", "version": 1, "id": "j", "weather": { "wind": [1, 2.50, "x"] }, "specs": [ { "id": "s", "height": 1.8288, "glitter": true } ],
              "obstacles": [ { "id": "o", "leg": "l", "kind": "swamp", "from": 1, "to": 2, "ooze": 3e2 } ] }
            """;
        var written = Text(Read(text).Job!);
        Assert.Contains("\"wind\": [", written, StringComparison.Ordinal);
        Assert.Contains("2.50", written, StringComparison.Ordinal);
        Assert.Contains("\"glitter\": true", written, StringComparison.Ordinal);
        Assert.Contains("\"kind\": \"swamp\"", written, StringComparison.Ordinal);
        Assert.Contains("\"ooze\": 3e2", written, StringComparison.Ordinal);
        Assert.Equal(written, Text(Read(written).Job!));
    }

    [Fact]
    public void LeftOutFieldsTakeTheirDefaults()
    {
        var job = Read("""{ "id": "j", "specs": [ { "id": "s", "height": 1.8288 } ] }""").Job!;
        Assert.Equal(("tautline-job", "base", "9", "rail", "wire"), (job.Format, job.RuleSet, job.Specs[0].Gauge, job.Specs[0].Top, job.Specs[0].Bottom));
        Assert.Empty(job.Lines);
    }

    [Fact]
    public void AllValuesOfTheWrongKindAreToldAtTheirPlace()
    {
        const string text = """
            { "id": "j", "specs": [ { "id": "s", "height": "6 ft" } ],
              "lines": [ { "id": "l", "spec": "s", "vertices": [
                { "id": "a", "east": 0, "north": 1e999 },
                { "id": "b", "east": [], "north": 1 } ] } ] }
            """;
        var slips = Read(text).Problems.Where(p => p.Code == ProblemCode.FileField).ToList();
        Assert.Equal(["line 1, column 48", "line 3, column 38", "line 4, column 26"], slips.Select(s => s.Place.Path));
        Assert.Equal("A value does not fit: the text \"6 ft\" where a number of metres belongs.", ProblemText.Message(slips[0], UnitSystem.Metric));
    }

    [Theory]
    [InlineData("{ \"id\": 'j' }", "line 1, column 9", "The file stops being JSON: \"'\" cannot stand here.")]
    [InlineData("{ \"id\": \"j\",\n  \"lines\": [ }", "line 2, column 14", "The file stops being JSON: '}' cannot stand here.")]
    [InlineData("{ \"id\": \"j\", \"name\": \"hill", "line 1, column 27", "The file stops being JSON: it ends before its last bracket is closed.")]
    [InlineData("{ \"id\": \"j\", ", "line 1, column 14", "The file stops being JSON: it ends before its last bracket is closed.")]
    [InlineData(" \n", "line 2, column 1", "The file stops being JSON: there is nothing in it.")]
    [InlineData("{ \"id\": \"j\", \"lines\": 7 }", "$.lines (line 1, column 24)", "A value does not fit: the number 7 is of another kind than belongs here, or too large.")]
    [InlineData("{ \"id\": \"j\", \"name\": [\"a\"] }", "$.name (line 1, column 23)", "A value does not fit: a list is of another kind than belongs here.")]
    [InlineData("{ \"id\": \"j\", \"id\": \"k\" }", "$.id (line 1, column 19)", "A value does not fit: the field \"id\" is there twice.")]
    public void WhatIsWrongIsSaidInOurOwnWords(string text, string where, string said)
    {
        var problem = Assert.Single(Read(text).Problems);
        Assert.Equal((where, said), (problem.Place.Path, ProblemText.Message(problem, UnitSystem.Metric)));
    }

    [Fact]
    public void TruncatedTextIsToldWithItsEnd()
    {
        var whole = Text(Some.Yard());
        var problem = Assert.Single(Read(whole[..(whole.Length / 2)]).Problems);
        Assert.Equal(ProblemCode.FileNotJson, problem.Code);
        Assert.StartsWith("line ", problem.Place.Path, StringComparison.Ordinal);
    }

    /// <summary>Cut anywhere, a file is told of; it never throws and never comes back as if whole.</summary>
    [Fact]
    public void NoCutOfAFileThrows()
    {
        var whole = JobFile.Write(Some.Yard());
        for (var i = 0; i < whole.Length - 2; i++) Assert.True(JobFile.Read(whole.AsSpan(0, i)).HasErrors);
    }

    [Theory]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("42")]
    [InlineData("""{ "format": "something else", "id": "x" }""")]
    [InlineData("""{ "id": 7 }""")]
    [InlineData("{}")]
    [InlineData("""{ "id": "x", "id": "y" }""")]
    public void WhatIsNoJobIsAnError(string text) => Assert.True(Read(text).HasErrors);

    [Fact]
    public void MoreThanTheLimitIsRefusedUnread()
    {
        var reading = JobFile.Read(new byte[JobFile.LargestBytes + 1]);
        Assert.Equal(ProblemCode.FileTooLarge, Assert.Single(reading.Problems).Code);
    }

    [Fact]
    public void ANewerFileThatNeedsUnderstandingOpensReadOnly()
    {
        var reading = Read("""{ "format": "tautline-job", "version": 9, "mustUnderstand": ["tunnels"], "id": "j" }""");
        Assert.True(reading.ReadOnly);
        Assert.NotNull(reading.Job);
        Assert.Equal([ProblemCode.FileNewer, ProblemCode.FileMustUnderstand], reading.Problems.Select(p => p.Code));
        Assert.Throws<InvalidOperationException>(() => JobFile.Write(reading.Job));
    }

    [Fact]
    public void ANewerFileThatNeedsNothingIsOnlyNoted()
    {
        var reading = Read("""{ "format": "tautline-job", "version": 2, "id": "j", "new": 1 }""");
        Assert.False(reading.ReadOnly || reading.HasErrors);
        Assert.Contains("\"version\": 2", Text(reading.Job!), StringComparison.Ordinal);
    }

    /// <summary>Any job, saved and loaded, is written the same again: no value changes by a bit.</summary>
    [Fact]
    public void SaveAndLoadGiveEqualValues()
        => GenJob.Any.Always(job =>
        {
            var text = Text(job);
            var reading = Read(text);
            Assert.Empty(reading.Problems);
            Assert.Equal(text, Text(reading.Job!));
            Assert.Equal(job.Lines[0].Vertices.Select(v => (v.East, v.North)), reading.Job!.Lines[0].Vertices.Select(v => (v.East, v.North)));
        }, iter: 200);
}
