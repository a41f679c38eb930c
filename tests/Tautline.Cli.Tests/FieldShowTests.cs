using System.Text;
using System.Text.Json;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;

namespace Tautline.Cli.Tests;

/// <summary>What a field file holds, shown. The sample's own figures are in <see cref="FieldSampleTests"/>.</summary>
public sealed class FieldShowTests
{
    private static Ran Show(byte[] file, params string[] more)
    {
        using var folder = new CliFolder().Put("field.json", file);
        return folder.Run(["field", "show", "@field.json", "--zone", "-06:00", "--today", "2026-10-13", .. more]);
    }

    private static string[] Table(string output, string heading)
        => [.. output[output.IndexOf(heading, StringComparison.Ordinal)..].Split('\n').Skip(2).TakeWhile(l => l.Length > 0).Select(l => l.Trim())];

    [Fact]
    public void WorkIsShownByRunAndOperation() => Assert.Equal(
        [
            "side, run 1  A1 to A7      7/7    7/7  7/7   done     -    -  Hang",
            "side, run 2  A8 to A12     0/5    0/5  0/5      -     -    -  Stake",
            "side, run 3  A12 to A19    0/7    0/7  0/7      -     -    -  Stake",
        ],
        Table(Show(FieldFiles.Sample).Output, "Work by run"));

    [Fact]
    public void HoursAreSummedByPersonAndOperation() => Assert.Equal(
        ["Ines    Stake          8", "Ines    Frame          6", "Tomas   Drill        7.5", "Tomas   Set posts      8", "29.5 hours in all"],
        Table(Show(FieldFiles.Sample).Output, "Hours"));

    [Theory]
    [InlineData("2026-10-11", "Do not dig yet: the locate ticket begins later.")]
    [InlineData("2026-10-12", "A locate ticket is in force.")]
    [InlineData("2026-10-26", "A locate ticket is in force.")]
    [InlineData("2026-10-27", "Do not dig: the locate ticket has run out.")]
    public void WhetherATicketIsInForceHangsOnTheDay(string day, string word)
    {
        using var folder = new CliFolder();
        // Whole days: what was written six hours west of here is judged by the days that were written.
        foreach (var zone in new[] { "-06:00", "+00:00", "-10:00" })
        {
            var shown = folder.Run("field", "show", Samples.Field, "--today", day, "--zone", zone).Output;
            Assert.Contains($"Digging on {day}\n  {word}\n  Ticket 2610-0447, 2026-10-12 to 2026-10-26", shown, StringComparison.Ordinal);
            Assert.Contains("Check the marks on the ground first; private lines are not marked.", shown, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void WithoutATicketNobodyDigs() => Assert.Contains("  Do not dig: no locate ticket is on record.\n  Check the marks", Show(FieldFiles.Of()).Output, StringComparison.Ordinal);

    /// <summary>Half past eleven in the evening on the 26th where the work is, and already the 27th in London.</summary>
    [Fact]
    public void UnaskedTheDayIsTheMachinesWhereTheWorkIs()
    {
        using var folder = new CliFolder { Clock = new Stopped(new(2026, 10, 27, 5, 30, 0, TimeSpan.Zero)) };
        Assert.Contains("Digging on 2026-10-26\n  A locate ticket is in force.", folder.Run("field", "show", Samples.Field, "--zone", "-06:00").Output, StringComparison.Ordinal);
        Assert.Contains("Digging on 2026-10-27\n  Do not dig", folder.Run("field", "show", Samples.Field).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void EntriesAreListedWithWhatBecameOfThem()
    {
        var rows = Table(Show(FieldFiles.Of(
            FieldFiles.Entry("a", 1, "one"), FieldFiles.Entry("a", 2, "two") with { Supersedes = new("a", 1) }, FieldFiles.Entry("b", 3, "three"),
            FieldFiles.Entry("b", 4) with { Supersedes = new("b", 3), TakesBack = true }), "--entries").Output, "Entries");
        Assert.Equal(["2026-10-13 08:01  a/1    a    note  no longer   one", "2026-10-13 08:02  a/2    a    note              two", "2026-10-13 08:03  b/3    b    note  no longer   three", "2026-10-13 08:04  b/4    b    note  taken back  takes back b/3"], rows);
    }

    [Fact]
    public void WhatIsOddAboutTheLogIsToldWithItsEntries()
    {
        var shown = Show(FieldFiles.Of(
            FieldFiles.Entry("a", 1, "one"), FieldFiles.Entry("b", 2, "mine") with { Supersedes = new("a", 1) }, FieldFiles.Entry("c", 3, "yours") with { Supersedes = new("a", 1) },
            FieldFiles.Entry("a", 4, "before"), FieldFiles.Entry("a", 4, "after the backup"), FieldFiles.Entry("a", 5, "", "drone"))).Output;
        Assert.Contains("-  a/1: this entry was corrected twice; both corrections stand until one is taken back.\n", shown, StringComparison.Ordinal);
        Assert.Contains("-  a/4: two different entries carry this number, as after a restored backup; both stand until one is taken\n", shown, StringComparison.Ordinal);
        Assert.Contains("-  a/5: this entry is of a kind this program does not know; it is kept and handed on, and not counted here.\n", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void AnOpenConflictIsShownInWordsWithBothValues()
    {
        var shown = Show(FieldFiles.Of(FieldFiles.Opening("a", 3).Merge(FieldFiles.Opening("b", 5)))).Output;
        Assert.Equal(["Gate side-gate: opening  3' 0\"             5' 0\"", "They are settled on a phone or in the browser: Field, Hand over."], Table(shown, "Open conflicts"));
        Assert.Contains("2 edits of the job since it was shared, 1 open conflict\n", shown, StringComparison.Ordinal);
    }

    /// <summary>A look at the whole first run finds it out of plumb; what is to be put right was put right and not looked at yet; a stage is signed for.</summary>
    [Fact]
    public void ChecksAreShownByStageWithThePunchList()
    {
        var where = new LogPlace { Leg = new("side/leg1"), At = Length.FromFeet(20), Called = "side" };
        var file = FieldFiles.Of(
            FieldFiles.Entry("a", 1, "", LogEntry.Check) with { Place = where, Found = new() { Item = "plumb", Measured = 3, Passed = false, Of = "run" } },
            FieldFiles.Entry("a", 2, "Cap missing", LogEntry.Punch) with { Place = where, Punched = new() { State = PunchItem.Open } },
            FieldFiles.Entry("a", 3, "", LogEntry.Punch) with { Punched = new() { Of = new("a", 2), State = PunchItem.Mended } },
            FieldFiles.Entry("a", 4, "", LogEntry.Check) with { Found = new() { Item = Checked.SignOff, Passed = true, Stage = "gates", By = "The owner" } },
            FieldFiles.Entry("a", 5, "", LogEntry.Check) with { Place = where, Found = new() { Item = "colour", Measured = 7, Passed = true, Of = "run" } });
        var shown = Show(file, "--entries").Output;
        Assert.Matches(@"\n  Posts +0    1 +\d+  -\n", shown);
        Assert.Matches(@"\n  Gates +0    0 +\d+  The owner, 2026-10-13 08:04\n", shown);
        Assert.Contains("1 check is of a place the job does not have any more, or of a newer program.", shown, StringComparison.Ordinal);
        Assert.Contains("Punch list: 2 items wait\n", shown, StringComparison.Ordinal);
        Assert.Contains("a/1    Posts out of plumb  side, 20' 0\" along its leg  open", shown, StringComparison.Ordinal);
        Assert.Contains("a/2    Cap missing         side, 20' 0\" along its leg  put right, to be looked at", shown, StringComparison.Ordinal);
        Assert.Contains("Posts out of plumb  3 degrees  not as it should be", shown, StringComparison.Ordinal);
        Assert.Contains("colour                      7  as it should be", shown, StringComparison.Ordinal);
        Assert.Contains("Punch list: put right, to be looked at, a/2\n", shown, StringComparison.Ordinal);
        Assert.Contains("Signed for: Gates, The owner\n", shown, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Show(file, "--json").Output);
        Assert.Equal([("plumb", "open"), (null, "mended")], json.RootElement.GetProperty("punch").EnumerateArray().Select(p => (p.TryGetProperty("check", out var check) ? check.GetString() : null, p.GetProperty("state").GetString())));
        Assert.Equal((1, "The owner"), (json.RootElement.GetProperty("stages")[0].GetProperty("failed").GetInt32(), json.RootElement.GetProperty("stages")[3].GetProperty("signedBy").GetString()));
    }

    [Fact]
    public void DevicesAreListedWithTheirPeople() => Assert.Equal(
        ["phone-c1  Ines         10      0  1 to 10  2026-10-13 15:30", "phone-k7  Tomas         9      1  1 to 10  2026-10-13 15:32"], Table(Show(FieldFiles.Sample).Output, "Devices"));

    [Fact]
    public void MachinesGetTheSameAsJson()
    {
        using var json = JsonDocument.Parse(Show(FieldFiles.Sample, "--json", "--entries").Output);
        var root = json.RootElement;
        Assert.Equal(("cedar-lane", 19, 18, 1), (root.GetProperty("job").GetString(), root.GetProperty("entries").GetInt32(), root.GetProperty("standing").GetInt32(), root.GetProperty("edits").GetInt32()));
        Assert.Equal(("inForce", true, "2610-0447"), (root.GetProperty("dig").GetProperty("word").GetString(), root.GetProperty("dig").GetProperty("ticketInForce").GetBoolean(), root.GetProperty("dig").GetProperty("ticket").GetString()));
        var ticket = root.GetProperty("tickets")[0];
        Assert.Equal(("2026-10-12", "2026-10-26"), (ticket.GetProperty("firstDay").GetString(), ticket.GetProperty("lastDay").GetString()));
        var set = root.GetProperty("runs")[0].GetProperty("operations")[2];
        Assert.Equal(("set", 7, 7), (set.GetProperty("operation").GetString(), set.GetProperty("done").GetInt32(), set.GetProperty("of").GetInt32()));
        var moved = root.GetProperty("built").GetProperty("posts").EnumerateArray().Single(p => p.GetProperty("post").GetString() == "A4");
        Assert.Equal(0.2032, moved.GetProperty("along").GetDouble(), 6);
        Assert.Equal(14_700, root.GetProperty("changes")[0].GetProperty("totalCents").GetInt64());
        Assert.Equal(29.5, root.GetProperty("hours").EnumerateArray().Sum(h => h.GetProperty("hours").GetDouble()), 9);
        Assert.Equal((0, 0, 2), (root.GetProperty("conflicts").GetArrayLength(), root.GetProperty("findings").GetArrayLength(), root.GetProperty("devices").GetArrayLength()));
        var first = root.GetProperty("log")[0];
        Assert.Equal(("2026-10-12T06:50:00-06:00", "phone-c1"), (first.GetProperty("time").GetString(), first.GetProperty("entry").GetProperty("device").GetString()));
    }

    [Fact]
    public void PhotosAreCountedInTheZipAndThoseThatAreAwayToo()
    {
        var (one, two, away) = (FieldFiles.Picture("one"), FieldFiles.Picture("two"), FieldFiles.Picture("away"));
        var log = FieldFiles.Of(FieldFiles.Entry("a", 1, "rock", LogEntry.Photo) with { Photos = [FieldFiles.Photo(one), FieldFiles.Photo(away)] });
        Assert.Contains("photos  2 in the ZIP; 1 more named in the log and not in it; 1 named by no entry\n", Show(FieldFiles.ZipOf(log, one, two)).Output, StringComparison.Ordinal);
        Assert.Contains("photos  none in this file; its log names 2 photos, which come with the ZIP\n", Show(log).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ADamagedEntryIsToldAndTheRestIsShown()
    {
        var text = Encoding.UTF8.GetString(FieldFiles.Of(FieldFiles.Entry("a", 1, "one"), FieldFiles.Entry("a", 2, "two"))).Replace("\"sequence\":1", "\"sequence\":0", StringComparison.Ordinal);
        var ran = Show(Encoding.UTF8.GetBytes(text));
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.Equal("warning: field.json, log[0]: $.sequence is below 1. This part was left out, the rest is taken.\n", ran.Error);
        Assert.Contains("log     1 entry, 1 of them stand", ran.Output, StringComparison.Ordinal);
    }

    /// <summary>Whoever writes such a file: the program tells it and does not fall over.</summary>
    [Fact]
    public void AnEntryBeyondAllBoundsIsToldAndNotCounted()
    {
        var far = new PostDone { Leg = new("side/leg1"), At = new(1e300), East = new(1e300), North = Length.Zero, Line = true };
        var ran = Show(FieldFiles.Of(
            FieldFiles.Entry("a", 1, "", LogEntry.Work) with { Done = new() { Operation = "set", Count = 1, Posts = [far] } },
            FieldFiles.Entry("a", 2, "", LogEntry.Change) with { Changed = new() { Quantity = 1, Unit = "x", UnitCents = 1, TotalCents = long.MinValue, Signer = "" } },
            FieldFiles.Entry("a", 3, "", LogEntry.Hours) with { Worked = new() { Hours = double.MaxValue } },
            FieldFiles.Entry("a", 4, "a note") with { At = long.MaxValue },
            FieldFiles.Entry("a", 5, "", LogEntry.Ticket) with { Locate = new() { Number = "9", From = long.MinValue, To = long.MaxValue } }), "--entries");
        Assert.Equal(3, ran.Error.Split("beyond all bounds: it is kept, and not counted here").Length - 1);
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Contains("no date", ran.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Fine, Show(FieldFiles.Of(FieldFiles.Entry("a", 4, "a note") with { At = long.MinValue }), "--json", "--entries").Exit);
    }

    [Fact]
    public void WhereTheJobHasErrorsTheLogIsShownAllTheSame()
    {
        var ran = Show(FieldFiles.Of(FieldFiles.Opening("a", 90), FieldFiles.Entry("a", 2, "", LogEntry.Hours) with { Worked = new() { Hours = 4 } }));
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.StartsWith("error: field.json, the job as it is now, gates[0]", ran.Error, StringComparison.Ordinal);
        Assert.Contains("not shown: the job as it is now has errors", ran.Output, StringComparison.Ordinal);
        Assert.Contains("4 hours in all", ran.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--today cannot be '10/12/2026': write a day as 2026-10-12.", "--today", "10/12/2026")]
    [InlineData("--zone cannot be 'Mars': write a zone this machine knows, such as America/Denver, or hours and minutes from UTC, such as -06:00.", "--zone", "Mars")]
    [InlineData("--zone cannot be '-15:00'", "--zone", "-15:00")]
    public void AWrongDayOrZoneIsRefused(string message, params string[] flags)
    {
        using var folder = new CliFolder();
        var ran = folder.Run(["field", "show", Samples.Field, .. flags]);
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.Contains(message, ran.Error, StringComparison.Ordinal);
        Assert.EndsWith("hint: 'tautline field show --help' shows what belongs here.\n", ran.Error, StringComparison.Ordinal);
    }

    private sealed class Stopped(DateTimeOffset now) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => now;
    }
}
