namespace Tautline.Cli.Tests;

/// <summary>Small jobs typed by hand. The 100-ft line and the yard are counted by hand in docs/checks/first-light.md.</summary>
internal static class Jobs
{
    private const string FenceSpec =
        """{ "id": "fence", "height": 1.8288, "linePost": "2.375-sch40", "terminalPost": "2.875-sch40", "railSection": "1.660-sch40", "brace": "no" }""";

    private const string Calibrated = """[{ "spec": "fence", "tenPickets": 0.3556 }]""";

    /// <summary>Part A of the hand counts: one straight level line of 100 ft.</summary>
    public const string Line100 = $$"""
        {
          "format": "tautline-job", "version": 1, "id": "line-100", "name": "Straight line",
          "specs": [{{FenceSpec}}],
          "calibrations": {{Calibrated}},
          "lines": [
            { "id": "main", "order": "i", "spec": "fence", "vertices": [
              { "id": "a", "order": "1", "east": 0, "north": 0, "leg": { "id": "ab" } },
              { "id": "b", "order": "2", "east": 0, "north": 30.48 } ] }
          ]
        }
        """;

    /// <summary>Part B of the hand counts: a closed yard of 60 x 90 ft with a walk gate and a double gate.</summary>
    public const string Yard = $$"""
        {
          "format": "tautline-job", "version": 1, "id": "yard-job",
          "specs": [{{FenceSpec}}],
          "calibrations": {{Calibrated}},
          "lines": [
            { "id": "yard", "order": "i", "closed": true, "spec": "fence", "vertices": [
              { "id": "a", "order": "1", "east": 0, "north": 0, "leg": { "id": "ab" } },
              { "id": "b", "order": "2", "east": 0, "north": 18.288, "leg": { "id": "bc" } },
              { "id": "c", "order": "3", "east": 27.432, "north": 18.288, "leg": { "id": "cd" } },
              { "id": "d", "order": "4", "east": 27.432, "north": 0, "leg": { "id": "da" } } ] }
          ],
          "gates": [
            { "id": "walk", "leg": "ab", "kind": "walk", "nearFace": 6.096, "opening": 1.2192 },
            { "id": "drive", "leg": "cd", "kind": "double", "nearFace": 9.144, "opening": 4.8768 }
          ]
        }
        """;

    /// <summary>The 100-ft line on a grade of 12 %.</summary>
    public static string Slope12 => Line100.Replace("""{ "id": "ab" }""", """{ "id": "ab", "grade": 0.12 }""", StringComparison.Ordinal);

    /// <summary>3,000 ft: more posts than are listed unasked.</summary>
    public static string Long => Line100.Replace("30.48", "914.4", StringComparison.Ordinal);

    public static string With(string found, string instead)
        => Line100.Contains(found, StringComparison.Ordinal)
            ? Line100.Replace(found, instead, StringComparison.Ordinal)
            : throw new ArgumentException($"the job does not say {found}");
}
