using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Cli.Input;

/// <summary>Makes a job of an outline: its lines, and one spec for all of them.</summary>
internal static class OutlineSource
{
    public static LoadedJob Read(string path, byte[] bytes, OutlineChoices choices, UnitSystem units)
    {
        var result = GeoJsonReader.Read(bytes, new ImportOptions { SourceName = path, CoordinateSystem = choices.System });
        List<Finding> findings = [.. result.Problems.Select(ImportFindings.Describe)];
        if (result.Lines.IsEmpty) return LoadedJob.Of(path, default, null, findings);
        var height = choices.Height ?? Length.FromFeet(6);
        findings.Add(Assumed(path, height, choices.Height is null, units));
        var job = OutlineJob.Make(
            result, new JobId("outline"), Path.GetFileNameWithoutExtension(path), units, new Spec { Id = new("fence"), Height = height },
            gradeFromElevations: true);
        return LoadedJob.Of(path, default, job, findings);
    }

    private static Finding Assumed(string path, Length height, bool guessed, UnitSystem units) => new(
        Severity.Note, "OutlineSpec", path,
        $"An outline names no fence: planned is {LengthText.Show(height, units)} fabric, 2-in mesh, 9 gauge, top rail, bottom wire, no gates.",
        guessed ? "Give --spec HEIGHT for another height; make a job file for anything else." : "Make a job file for anything but the height.");
}
