using Tautline.Architecture.Tests.Reading;

namespace Tautline.Architecture.Tests.Rules;

/// <summary>Who may know whom. Arrows point to the Engine; it knows nobody.</summary>
internal static class Layers
{
    public const string Engine = "Tautline.Engine";

    private static readonly Dictionary<string, int> Heights = new(StringComparer.Ordinal)
    {
        [Engine] = 0,
        ["Tautline.Spanish"] = 0,
        ["Tautline.Formats"] = 1,
        ["Tautline.Field"] = 1,
        ["Tautline.Documents"] = 1,
        ["Tautline.Cutting"] = 1,
        ["Tautline.Store"] = 1,
        ["Tautline.Papers"] = 2,
        ["Tautline.Desk"] = 3,
        ["Tautline.FieldScreens"] = 4,
        ["Tautline.Web"] = 5,
        ["Tautline.Server"] = 5,
        ["Tautline.Cli"] = 5,
    };

    // The server hands out the web app, and `tautline serve` starts the server.
    private static readonly (string From, string To)[] Neighbours = [("Tautline.Server", "Tautline.Web"), ("Tautline.Cli", "Tautline.Server")];

    public static IEnumerable<string> Violations(string project, IEnumerable<string> references)
    {
        if (!Heights.TryGetValue(project, out var height))
            return [$"{project} has no place in the layers yet: give it one in {nameof(Layers)}"];
        return references.Where(to => !MayKnow(project, height, to)).Select(to => $"{project} must not reference {to}");
    }

    private static bool MayKnow(string from, int height, string to) =>
        Heights.TryGetValue(to, out var other) && (other < height || Neighbours.Contains((from, to)));
}
