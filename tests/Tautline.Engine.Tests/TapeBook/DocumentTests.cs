using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

/// <summary>The books printed in docs/tape-book.md, and the sample jobs, hold what they promise.</summary>
public sealed class DocumentTests
{
    [Fact]
    public void BooksInTheDocumentPlan()
    {
        var books = File.ReadAllText(Path.Combine(Root(), "docs", "tape-book.md")).ReplaceLineEndings("\n").Split("```tape\n").Skip(1).ToList();
        Assert.Equal(2, books.Count);
        foreach (var book in books)
        {
            var job = Books.Job(book[..book.IndexOf("```", StringComparison.Ordinal)]);
            Assert.Empty(Books.Plan(job).Problems.Where(p => p.Severity == Severity.Error).Select(p => ProblemText.Message(p, UnitSystem.UsCustomary)));
        }
    }

    [Theory]
    [InlineData("level-yard.json")]
    [InlineData("sloped-lot.json")]
    [InlineData("ball-field.json")]
    [InlineData("corner-lot.json")]
    [InlineData("bank.json")]
    public void SampleJobComesBackFromItsBookWithTheSameFigures(string sample)
    {
        var job = Jobs.JobFileOf(Path.Combine(Root(), "samples", sample));
        var written = TapeBookWriter.Write(job, job.Units);
        Assert.Empty(written.Problems);
        var (first, second) = (Books.Plan(job), Books.Plan(written.Text));
        Assert.NotEmpty(first.Lines);
        Assert.Equal(first.Takeoff.Select(t => (t.Part, t.Section, t.Purchase)), second.Takeoff.Select(t => (t.Part, t.Section, t.Purchase)));
        Assert.Equal(
            first.Lines.SelectMany(l => l.Posts).Select(p => (p.Kind, p.Station.Nanometres)),
            second.Lines.SelectMany(l => l.Posts).Select(p => (p.Kind, p.Station.Nanometres)));
    }

    private static class Jobs
    {
        public static Engine.Jobs.Job JobFileOf(string path) => Engine.Jobs.JobFile.Read(File.ReadAllBytes(path)).Job!;
    }

    private static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Tautline.slnx"))) folder = Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("Tautline.slnx");
        return folder;
    }
}
