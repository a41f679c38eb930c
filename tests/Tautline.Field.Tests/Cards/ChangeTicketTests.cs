using System.Text;
using Tautline.Field.Cards;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.Cards;

public sealed class ChangeTicketTests
{
    private static readonly IReadOnlyList<IReadOnlyList<int>> signature = [[100, 100, 300, 150, 320, 90], [400, 100, 420, 160]];

    private static readonly ChangeTicket rock = new(3, "hole", 45.50m, "rock at thirty inches, core drill", "R. Ash", signature);

    [Theory]
    [InlineData("3", "45.50", 13650)]
    [InlineData("2.5", "0.33", 83)] // 82.5 cents, half a cent up
    [InlineData("1.5", "0.33", 50)] // 49.5
    [InlineData("0.1", "19.99", 200)] // 199.9
    [InlineData("7", "0", 0)]
    public void TheTotalIsRoundedOnceToTheCent(string quantity, string price, long cents)
        => Assert.Equal(cents, (rock with { Quantity = decimal.Parse(quantity, Invariant), UnitPrice = decimal.Parse(price, Invariant) }).TotalCents);

    [Fact]
    public void WhatIsMissingIsTold()
    {
        Assert.Empty(rock.Faults);
        Assert.Equal([ChangeFault.Signature], (rock with { Strokes = [[100, 100, 102, 101]] }).Faults);
        Assert.Equal([ChangeFault.Price], (rock with { UnitPrice = 1.005m }).Faults);
        Assert.Equal([ChangeFault.Quantity, ChangeFault.Unit, ChangeFault.Words], (rock with { Quantity = 0, Unit = " ", Words = "" }).Faults);
        Assert.Throws<InvalidOperationException>(() => (rock with { Signer = "" }).Order());
    }

    /// <summary>As the log keeps it: money as whole cents, and the same after reading it back.</summary>
    [Fact]
    public void TheEntryIsReadBackAsItWasWritten()
    {
        var entry = Yard.Entry("a", 1, 1, LogEntry.Change) with { Text = rock.Words, Changed = rock.Order() };
        var json = Encoding.UTF8.GetString(LogJson.Write(entry));
        Assert.Contains("\"changed\":{\"quantity\":3,\"unit\":\"hole\",\"unitCents\":4550,\"totalCents\":13650,\"signer\":\"R. Ash\",\"strokes\":[[100,100,300,150,320,90],[400,100,420,160]]}", json, StringComparison.Ordinal);
        var read = LogJson.Read(Encoding.UTF8.GetBytes(json), out var fault)!;
        Assert.Equal("", fault);
        Assert.Equal(json, Encoding.UTF8.GetString(LogJson.Write(read)));
        Assert.Empty(LogState.Of([read]).Findings);
    }

    private static System.Globalization.CultureInfo Invariant => System.Globalization.CultureInfo.InvariantCulture;
}
