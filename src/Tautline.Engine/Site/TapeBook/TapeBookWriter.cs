using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes a job as a tape book that plans to the same legs, gates and stretches.</summary>
public static class TapeBookWriter
{
    /// <param name="job">A job that passes the checks of the plan; of any other the book says what cannot be read back.</param>
    /// <param name="units">The units the book is written in; lengths read back to the nanometre in either.</param>
    /// <exception cref="OverflowException">A length of the job is not finite.</exception>
    public static TapeBookWriting Write(Job job, UnitSystem units)
    {
        var problems = new TapeProblems();
        var writer = new JobWriter(job, new TapePage(units, problems), units);
        var text = writer.Write();
        foreach (var slip in TapeBookReader.Read(text).Problems.Where(p => p.Severity == Severity.Error))
            problems.Add(TapeTexts.WrittenWrong, slip.Line, slip.Column, slip.Message, slip.Hint);
        return new TapeBookWriting(text, problems.Found);
    }
}
