using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>Takes what was written into a field: reads it, edits the job, and answers what was wrong; nothing where it was taken.</summary>
public static class Written
{
    public static Task<string> Length(Session session, string text, Func<Job, Length, EditOutcome> edit) =>
        With(session, LengthText.Parse(text, session.Job.Units == UnitSystem.Metric ? LengthUnit.Metre : LengthUnit.Foot), edit);

    /// <summary>A length that may be left out: an empty field means nothing.</summary>
    public static Task<string> MaybeLength(Session session, string text, Func<Job, Length?, EditOutcome> edit) => text.Trim().Length == 0
        ? EditAsync(session, job => edit(job, null))
        : Length(session, text, (job, length) => edit(job, length));

    /// <summary>A size is written in inches or millimetres where no unit is.</summary>
    public static Task<string> Size(Session session, string text, Func<Job, Length?, EditOutcome> edit) => text.Trim().Length == 0
        ? EditAsync(session, job => edit(job, null))
        : With(session, LengthText.Parse(text, session.Job.Units == UnitSystem.Metric ? LengthUnit.Millimetre : LengthUnit.Inch), (Job job, Length size) => edit(job, size));

    public static Task<string> Slope(Session session, string text, Func<Job, Slope, EditOutcome> edit) => With(session, SlopeText.Parse(text), edit);

    public static Task<string> Turn(Session session, string text, Func<Job, double, EditOutcome> edit) => With(session, AngleText.Parse(text), edit);

    public static async Task<string> EditAsync(Session session, Func<Job, EditOutcome> edit)
    {
        await session.Apply(edit);
        return session.Refusal.FirstOrDefault(f => f.Severity == Engine.Problems.Severity.Error) is { } refused ? $"{refused.Message} {refused.Hint}" : "";
    }

    private static Task<string> With<T>(Session session, Parsed<T> read, Func<Job, T, EditOutcome> edit) => read.Ok
        ? EditAsync(session, job => edit(job, read.Value))
        : Task.FromResult($"{read.Problem.Message} {read.Problem.Hint}");
}
