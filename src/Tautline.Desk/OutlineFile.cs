using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Desk;

/// <summary>Makes a job of an outline: its lines, and one usual spec for all of them, which is then changed on the page.</summary>
internal static class OutlineFile
{
    public static OpenedJob Read(string fileName, byte[] bytes)
    {
        ImportResult result = GeoJsonReader.Read(bytes, new ImportOptions { SourceName = fileName });
        List<Finding> findings = [.. result.Problems.Select(Describe)];
        if (result.Lines.IsEmpty) return new(fileName, default, null, findings);
        findings.Add(new(Severity.Note, fileName, "An outline names no fence: a usual one of 6 ft is planned.", "Set height, fabric and frame under Spec & rules."));
        Job job = OutlineJob.Make(
            result, new JobId("outline"), Path.GetFileNameWithoutExtension(fileName), UnitSystem.UsCustomary, NewJob.UsualSpec, gradeFromElevations: true);
        return new(fileName, default, job, findings);
    }

    /// <summary>What a reader of an outside file found.</summary>
    public static Finding Describe(ImportProblem problem) => new(
        problem.Severity switch { ProblemSeverity.Error => Severity.Error, ProblemSeverity.Warning => Severity.Warning, _ => Severity.Note },
        problem.Where.ToString(), problem.Message, problem.Hint);
}
