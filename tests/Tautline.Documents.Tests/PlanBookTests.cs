using System.Text;
using ExcelDataReader;
using Tautline.Documents.Words;
using Tautline.Engine.Quantities;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Office;

namespace Tautline.Documents.Tests;

/// <summary>The tables of a plan, read back by others.</summary>
public sealed class PlanBookTests
{
    private static async Task<byte[]> BookAsync(UnitSystem units = UnitSystem.UsCustomary, string language = "en")
        => await XlsxWriter.WriteAsync(PlanBook.Of(SamplePlans.Of("level-yard.json"), new PaperChoice(units, Phrases.Of(language), default)));

    static PlanBookTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance); // the reader asks for one at its start

    /// <summary>Figures of the level yard as docs/checks counts them: 32 posts, 12 by 30 in holes at terminals, a cut length of 8 ft 8 in.</summary>
    [Fact]
    public async Task NumbersAreNumbersInTheStatedUnit()
    {
        using IExcelDataReader reader = ExcelReaderFactory.CreateReader(new MemoryStream(await BookAsync()));
        List<string> names = [];
        Dictionary<string, List<object?[]>> sheets = [];
        do
        {
            names.Add(reader.Name);
            sheets[reader.Name] = [];
            while (reader.Read()) sheets[reader.Name].Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetValue)]);
        }
        while (reader.NextResult());

        Assert.Equal(["Take-off", "Posts", "Runs", "Ends and cuts", "Gates"], names);
        Assert.Equal(33, sheets["Posts"].Count);
        object?[] heads = sheets["Posts"][0], first = sheets["Posts"][1];
        Assert.Equal(["A1", "yard", "corner", 0.0], first[..4]);
        Assert.Equal(12.0, first[Array.IndexOf(heads, "Hole diameter (in)")]);
        Assert.Equal(30.0, (double)first[Array.IndexOf(heads, "Hole depth (in)")]!, 9);
        Assert.Equal(104.0, (double)first[Array.IndexOf(heads, "Cut (in)")]!, 9);
        Assert.Equal(4.0, sheets["Gates"][1][4]);
        Assert.Equal(16.0, (double)sheets["Gates"][2][4]!, 9);
        Assert.Equal(13, sheets["Ends and cuts"].Count);
    }

    [Fact]
    public async Task LibreOfficeOpensIt()
    {
        string csv = Outside.Made("soffice", ["--headless", "--convert-to", "csv", "plan.xlsx"], "plan.xlsx", await BookAsync(), "plan.csv");

        Assert.StartsWith("No.,Part,Pipe,Length (ft),Spec,Net,Unit,Buy,Pack,Weight (lb),verify", csv, StringComparison.Ordinal);
        Assert.Contains("post,2.375-sch40,8.5", csv, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheSamePlanGivesTheSameBytesAndSpanishItsOwnNames()
    {
        Assert.Equal(await BookAsync(), await BookAsync());
        using IExcelDataReader reader = ExcelReaderFactory.CreateReader(new MemoryStream(await BookAsync(UnitSystem.Metric, "es")));
        Assert.Equal("Materiales", reader.Name);
    }
}
