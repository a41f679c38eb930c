using System.Text;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Desk;

/// <summary>A file that was opened: the job in it, if there is one to plan, and what its reader had to say.</summary>
/// <param name="FileName">As the person knows it.</param>
/// <param name="Json">The text, where the file is a job file: problems are then placed by line and column.</param>
/// <param name="Job">Nothing where the file holds no job that can be planned.</param>
public sealed record OpenedJob(string FileName, ReadOnlyMemory<byte> Json, Job? Job, IReadOnlyList<Finding> Findings)
{
    /// <summary>How the job's file kinds are told apart by the browser's file chooser.</summary>
    public const string Accepted = ".json,.geojson,.tape,.txt";

    public UnitSystem Units => Job?.Units ?? UnitSystem.UsCustomary;

    /// <summary>A job that came from no file: made here, or read off the shelf, where places in a text would mean nothing.</summary>
    public static OpenedJob Made(Job job) => new("", default, job, []);

    /// <summary>Reads a file by the kind its name ends in. Never throws for what is in it.</summary>
    public static OpenedJob Read(string fileName, byte[] bytes) => Path.GetExtension(fileName).ToLowerInvariant() switch
    {
        ".json" => JobDocument(fileName, bytes),
        ".geojson" => OutlineFile.Read(fileName, bytes),
        ".tape" or ".txt" => TapeBook(fileName, bytes),
        var kind => Refused(fileName, $"A file ending in '{kind}' cannot be opened here.", "A job ends in .json, an outline in .geojson, a tape book in .tape or .txt. Ground is attached in an open job."),
    };

    public static OpenedJob Refused(string fileName, string message, string hint) =>
        new(fileName, default, null, [Finding.Error(fileName, message, hint)]);

    /// <summary>A problem in words, at its place in the file and on the drawing.</summary>
    public Finding Describe(Problem problem, Job? job = null, Plan? plan = null) => new(
        problem.Severity, ProblemPlace.Where(this, problem.Place), ProblemText.Message(problem, Units), ProblemText.Hint(problem, Units))
    {
        At = job is null ? Selection.None : ProblemTarget.Of(job, plan, problem.Place),
    };

    private static OpenedJob JobDocument(string fileName, byte[] bytes)
    {
        JobReading reading = JobFile.Read(bytes);
        var read = new OpenedJob(fileName, bytes, reading.Job, []);
        Finding[] findings = [.. reading.Problems.Select(p => read.Describe(p))];
        return read with { Job = reading.HasErrors || reading.ReadOnly ? null : reading.Job, Findings = findings };
    }

    private static OpenedJob TapeBook(string fileName, byte[] bytes)
    {
        TapeBookReading reading = TapeBookReader.Read(Encoding.UTF8.GetString(bytes));
        Finding[] findings = [.. reading.Problems.Select(p => new Finding(p.Severity, $"{fileName}, line {p.Line}, column {p.Column}", p.Message, p.Hint))];
        return new(fileName, default, reading.HasErrors ? null : reading.Job, findings);
    }
}
