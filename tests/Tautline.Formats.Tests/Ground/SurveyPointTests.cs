using System.Text;
using Tautline.Formats.Ground;
using Tautline.Formats.Ground.Points;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

public sealed class SurveyPointTests
{
    [Theory]
    [InlineData("PNEZD", "12,5000.5,1000.25,98.4,EP")]
    [InlineData("PENZD", "12,1000.25,5000.5,98.4,EP")]
    [InlineData("NEZD", "5000.5,1000.25,98.4,EP")]
    [InlineData("ENZD", "1000.25,5000.5,98.4,EP")]
    [InlineData("PDNEZ", "12,EP,5000.5,1000.25,98.4")]
    [InlineData("XYZ", "1000.25,5000.5,98.4")]
    [InlineData("pnez", "12,5000.5,1000.25,98.4")]
    [InlineData("P-NEZ", "12,77,5000.5,1000.25,98.4")]
    public void ColumnsAreInTheOrderStated(string order, string row)
    {
        var file = Points(row, order);

        var point = Assert.Single(file.PointContent().Points);
        Assert.Equal((5000.5, 1000.25, 98.4, 1), (point.North, point.East, point.Height, point.Line));
        Assert.Equal(order.Contains('P', StringComparison.OrdinalIgnoreCase) ? "12" : "", point.Name);
        Assert.Equal(order.Contains('D') ? "EP" : "", point.Description);
    }

    [Theory]
    [InlineData("PNE", "12,5000.5,1000.25")]
    [InlineData("NE", "5000.5,1000.25")]
    public void OrdersWithoutHeightHaveNone(string order, string row) => Assert.Null(Assert.Single(Points(row, order).PointContent().Points).Height);

    [Theory]
    [InlineData("PNZ")]
    [InlineData("NNE")]
    [InlineData("PNEZZ")]
    [InlineData("PNEQ")]
    [InlineData("")]
    public void WhatIsNoOrderIsNone(string text)
    {
        Assert.Null(ColumnOrder.Find(text));
        Assert.Throws<ArgumentException>(() => ColumnOrder.Of(text));
        Assert.Null(GroundAnswers.Apply(new(), GroundQuestionKind.Columns, text));
    }

    [Theory]
    [InlineData("1;5000.5;1000.25;98.4;EP;B")]
    [InlineData("1\t5000.5\t1000.25\t98.4\tEP;B")]
    [InlineData("  1   5000.5 1000.25\t98.4  EP;B")]
    [InlineData("1, 5000.5 , 1000.25, 98.4, EP;B")]
    [InlineData("1;5000,5;1000,25;98,4;EP;B")]
    [InlineData("1\t5000,5\t1000,25\t98,4\tEP;B")]
    [InlineData("1 5000,5 1000,25 98,4 EP;B")]
    public void SeparatorAndDecimalMarkAreFoundOut(string row)
    {
        var point = Assert.Single(Points(row).PointContent().Points);

        Assert.Equal(("1", 5000.5, 1000.25, 98.4, "EP;B"), (point.Name, point.North, point.East, point.Height, point.Description));
    }

    [Theory]
    [InlineData("1,+5.0E3,1000.,.5,", 5000, 1000, 0.5)]
    [InlineData("1,5.0D+03,-1000,0,", 5000, -1000, 0)]
    [InlineData("1,\"5,000.5\",\"1,234,567.25\",98,", 5000.5, 1234567.25, 98)]
    public void NumbersAreReadAsTheyAreWritten(string row, double north, double east, double height)
    {
        var point = Assert.Single(Points(row).PointContent().Points);

        Assert.Equal((north, east, height), (point.North, point.East, point.Height));
    }

    [Theory]
    [InlineData("1,2,3,4,TOP WALL 18\" WI", "TOP WALL 18\" WI")]
    [InlineData("1,2,3,4,\"TOP, WALL\"", "TOP, WALL")]
    [InlineData("1,2,3,4,\"6\"\" PIPE\"", "6\" PIPE")]
    [InlineData("1,2,3,4,FENCE, OLD, 6'", "FENCE, OLD, 6'")]
    [InlineData("1,2,3,4,\"A\", \"B\"", "\"A\", \"B\"")]
    [InlineData("1,2,3,4,\"OPEN", "\"OPEN")]
    [InlineData("1,2,3,4,", "")]
    [InlineData("1,2,3,4", "")]
    [InlineData("1,2,3,4,CL.*.COLMN \\ x", "CL.*.COLMN \\ x")]
    public void TheDescriptionIsTheRestOfTheLine(string row, string description) => Assert.Equal(description, Assert.Single(Points(row).PointContent().Points).Description);

    [Fact]
    public void ACommaInsideNumbersAndBetweenThemIsRefusedWithTheReason()
    {
        var file = Points("1,538542,57,1455644,37,681,31,I\n2,538440,38,1455429,69,693,29,H");

        Assert.Null(file.Content);
        Assert.Equal(
            "The comma is both between the columns and inside the numbers: 1,538542,57,1455644,37,681,31,I. Which numbers belong together cannot be told.",
            file.Problem("CommasCollide").Message);
        Assert.Contains("semicolons or tabs", file.Problem("CommasCollide").Hint);
        Assert.Equal(57, Points("1,538542,57,1455644,37,681,31,I", "PNEZD", new() { Separator = ',' }).PointContent().Points[0].East);
    }

    [Fact]
    public void AHeaderThatSaysNorthAndEastSettlesTheOrder()
    {
        var file = Points("Point #,Easting (ft),Northing (ft),Elev.,Date,Desc\n7,1000,5000,98,2 May,EP, B", null);

        var point = Assert.Single(file.PointContent().Points);
        Assert.Equal(("7", 5000, 1000, 98, "EP, B"), (point.Name, point.North, point.East, point.Height, point.Description));
        Assert.Equal("The columns are as this header names them: PENZ-D.", file.Problem("HeaderTaken").Message);
        Assert.DoesNotContain("LinesSkipped", file.Codes());
    }

    [Theory]
    [InlineData("Punto;Norte;Este;Cota;Descripción")]
    [InlineData("Punkt;Hochwert;Rechtswert;Höhe;Code")]
    public void HeadersOfOtherLanguagesAreKnown(string header) =>
        Assert.Equal((5000, 1000), Assert.Single(Points(header + "\n7;5000;1000;98;x", null).PointContent().Points) is var p ? (p.North, p.East) : default);

    [Fact]
    public void AHeaderOfXAndYStillAsks()
    {
        var file = Points("X,Y,Z\n1000.5,5000.5,98", null);

        Assert.Null(file.Content);
        Assert.Equal(["ENZ", "NEZ"], file.Question(GroundQuestionKind.Columns).Choices.Select(c => c.Value));
    }

    [Fact]
    public void AStatementAgainstTheHeaderIsUsedAndTold()
    {
        var file = Points("P,N,E,Z,D\n1,5,6,7,x", "PENZD");

        Assert.Equal(6, file.PointContent().Points[0].North);
        Assert.Equal("The header names the columns PNEZD; PENZD was stated and is used.", file.Problem("HeaderContradicts").Message);
    }

    [Theory]
    [InlineData("1,5000.1,1000.2,98.1\n2,5001.1,1001.2,98.2", "PNEZ PENZ NEZD ENZD")]
    [InlineData("A1,5000.1,1000.2,98.1,x\nA2,5001.1,1001.2,98.2,y", "PNEZD PENZD")]
    [InlineData("5000.1,1000.2,98.1,x\n5001.1,1001.2,98.2,y", "NEZD ENZD PNED PEND")]
    [InlineData("1,5000.1,1000.2\n2,5001.1,1001.2", "PNE PEN NEZ ENZ")]
    [InlineData("5000.1 1000.2\n5001.1 1001.2", "NE EN")]
    [InlineData("1 x 5000.1 1000.2 98\n2 y 5001.1 1001.2 98", "PDNEZ PDENZ")]
    public void OrdersThatFitAreProposedAndAsked(string text, string orders)
    {
        var file = Points(text, null);

        Assert.Null(file.Content);
        Assert.Equal(orders.Split(' '), file.Question(GroundQuestionKind.Columns).Choices.Select(c => c.Value));
        Assert.True(file.Question(GroundQuestionKind.Columns).NeedsReading);
    }

    [Fact]
    public void AnAnswerPutIntoTheOptionsIsRead()
    {
        const string Text = "1,5000.1,1000.2,98.1\n2,5001.1,1001.2,98.2";
        var asked = Points(Text, null);

        var answered = Read(Text, GroundAnswers.Apply(Metres, GroundQuestionKind.Columns, asked.Questions[0].Choices[1].Value)!);

        Assert.Equal(1000.2, answered.PointContent().Points[0].North);
        Assert.True(answered.IsReady);
    }

    [Fact]
    public void LinesThatAreNoPointsAreCounted()
    {
        var file = Points("Alder Row\n=========\n\n# made by hand\n; old\n// x\n-- y\n1,5,6,7,a\n\nTOTAL,1\n");

        Assert.Single(file.PointContent().Points);
        Assert.Equal(
            "9 lines are no point and passed over: 2 blank, 4 comments, 3 headings or rules (the first is line 1, 'Alder Row').", file.Problem("LinesSkipped").Message);
    }

    [Fact]
    public void RowsThatLookLikePointsAndAreNoneAreToldWithTheirLines()
    {
        var file = Points("1,5,6,7,a\n2,5x,6,7,b\n3,5,6,seven,c\n4,5,\n5,5,6\n6,8,9,7,d");

        Assert.Equal(["1", "6"], file.PointContent().Points.Select(p => p.Name));
        Assert.Equal(
            ["2 The line looks like a point but its north '5x' is no number. It is left out.", "3 The line looks like a point but its height 'seven' is no number. It is left out.",
                "5 The line looks like a point but ends after 3 columns: it has no height. It is left out."],
            file.Problems.Where(p => p.Code == "RowLeftOut").Select(p => $"{p.Where.Line} {p.Message}"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("-9999")]
    [InlineData("-9999.000")]
    [InlineData("999999")]
    [InlineData("NaN")]
    [InlineData("1.#QNAN")]
    [InlineData("n/a")]
    [InlineData("--")]
    public void AMarkOfNoHeightIsNone(string mark)
    {
        var file = Points($"1,5,6,{mark},a\n2,7,8,9,b");

        Assert.Equal([null, 9], file.PointContent().Points.Select(p => p.Height));
        Assert.Equal("1 point has no height (blank or a mark such as -9999) and is no ground.", file.Problem("NoHeights").Message);
    }

    [Fact]
    public void AZeroFarBelowAllOthersIsNoHeight()
    {
        const string Text = "1,5,6,0,a\n2,7,8,98,b\n3,8,8,101,c";

        Assert.Equal("1 point has height 0 while all others lie between 98 and 101. They are taken to have none.", Points(Text).Problem("ZeroHeights").Message);
        Assert.Null(Points(Text).PointContent().Points[0].Height);
        Assert.Equal(0, Points(Text, "PNEZD", new() { ZeroIsAHeight = true }).PointContent().Points[0].Height);
        Assert.Equal(0, Points("1,5,6,0,a\n2,7,8,1,b\n3,8,8,3,c").PointContent().Points[0].Height);
    }

    [Fact]
    public void ANumberUsedTwiceIsToldAndBothAreKept()
    {
        var file = Points("7,5,6,7,a\n8,15,6,7,a\n7,25,6,7,a\n8,15,6,7,a");

        Assert.Equal(4, file.PointContent().Points.Length);
        Assert.Equal(("Point 7 also stands in line 1, at another place or height. Both are kept.", 3), (file.Problem("NumberTwice").Message, file.Problem("NumberTwice").Where.Line));
        Assert.Equal("1 row repeats a point with the same place and height; it counts once.", file.Problem("RowsRepeated").Message);
    }

    [Fact]
    public void OnePlaceWithTwoHeightsIsToldWithBothLines()
    {
        var file = Points("7,5,6,7,a\n8,15,6,7,a\n9,5,6,7.5,b");

        Assert.Equal(("At the place of line 1 (point 7, height 7) the height here is 7.5. The ground takes the first.", 3), (file.Problem("TwoHeights").Message, file.Problem("TwoHeights").Where.Line));
    }

    [Fact]
    public void APointFarFromAllOthersIsTold()
    {
        var text = string.Join('\n', Enumerable.Range(0, 20).Select(i => $"{i},{100 + i},{200 + 3 * i},5,x")) + "\n99,0,900000,5,x";

        Assert.Equal(21, Points(text).Problem("StrayPoint").Where.Line);
    }

    [Fact]
    public void PlaceHoldersAreKeptOnlyWhenSaidSo()
    {
        const string Text = "1,1.00,1.00,1.00,a\n2,1.00,1.00,1.00,a\n3,1.00,1.00,1.00,a\n4,5,6,7,b";

        var open = Points(Text);
        Assert.False(open.IsReady);
        Assert.Equal(["leave-out", "keep"], open.Question(GroundQuestionKind.PlaceHolders).Choices.Select(c => c.Value));
        Assert.Equal(ProblemSeverity.Warning, open.Problem("PlaceHolders").Severity);
        Assert.Single(Points(Text, "PNEZD", new() { PlaceHolders = PlaceHolders.LeaveOut }).PointContent().Points);
        Assert.Equal(4, Points(Text, "PNEZD", new() { PlaceHolders = PlaceHolders.Keep }).PointContent().Points.Length);
    }

    [Theory]
    [InlineData("1,5,6,7,a\r2,6,7,8,b\r")]
    [InlineData("1,5,6,7,a\r\n2,6,7,8,b\n\u001A")]
    [InlineData("\uFEFF1,5,6,7,a\n2,6,7,8,b")]
    public void LineEndsAndMarksDoNotMatter(string text) => Assert.Equal(["1", "2"], Points(text).PointContent().Points.Select(p => p.Name));

    [Fact]
    public void OtherEncodingsAreRead()
    {
        var options = Metres with { Points = new() { Columns = ColumnOrder.Of("PNEZD") } };
        var latin = GroundReader.Read(Encoding.Latin1.GetBytes("1,5,6,7,Böschung"), options);
        Assert.Equal("Böschung", latin.PointContent().Points[0].Description);
        Assert.Contains("NotUtf8", latin.Codes());
        byte[] utf16 = [.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes("1,5,6,7,Böschung")];
        Assert.Equal("Böschung", GroundReader.Read(utf16, options).PointContent().Points[0].Description);
        Assert.Contains("NotText", GroundReader.Read(Encoding.Unicode.GetBytes("1,5,6,7,x"), options).Codes());
    }

    [Theory]
    [InlineData("just words\nand more")]
    [InlineData("1\n2\n3")]
    public void ATextWithoutPointsIsTold(string text) => Assert.Equal(["NoPoints"], Points(text).Codes());

    [Fact]
    public void AnOrderThatFitsNoLineIsTold() => Assert.Equal("With the columns PDNEZ no line is a point.", Points("1,5,6,7", "PDNEZ").Problem("NoPoints").Message);

    [Fact]
    public void ACutOffLastLineIsTold()
    {
        Assert.Equal(2, Points("1,5,6,7,a\n2,6,7,8").Problem("LastLineOpen").Where.Line);
        Assert.DoesNotContain("LastLineOpen", Points("1,5,6,7,a\n2,6,7,8,b").Codes());
    }
}
