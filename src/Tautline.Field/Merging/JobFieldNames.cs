namespace Tautline.Field.Merging;

/// <summary>What the fields of a job hold, by their names in its file, for showing a conflict to people.</summary>
public static class JobFieldNames
{
    /// <summary>Fields that hold a length in metres.</summary>
    public static IReadOnlySet<string> Lengths { get; } = new HashSet<string>(StringComparer.Ordinal)
    {
        "again", "at", "clearance", "covers", "cutFrom", "depth", "east", "from", "gap", "height", "length", "mesh", "nearFace", "north", "opening", "originEast", "originNorth", "panel",
        "radius", "rod", "roll", "tenPickets", "tieSpacing", "to", "top", "width",
    };

    /// <summary>Fields that hold a slope, rise over run.</summary>
    public static IReadOnlySet<string> Slopes { get; } = new HashSet<string>(StringComparer.Ordinal) { "grade" };

    /// <summary>The things a path goes through, from the outside in: the list they are in and what names them there. A thing that stands by itself has no name.</summary>
    public static IReadOnlyList<(string List, string Name)> Things(string path)
    {
        List<(string, string)> things = [];
        string[] names = path.Split('/');
        for (var i = 0; i < names.Length; i++)
            if (names[i].StartsWith('@')) things.Add((JobFlat.Unescape(names[i - 1]), JobFlat.Unescape(names[i][(names[i].IndexOf('=', StringComparison.Ordinal) + 1)..])));
            else if (i > 0 && names[i] == "leg" && i + 1 < names.Length) things.Add(("legs", ""));
        return things;
    }

    /// <summary>The fields a path names: one, or several that are one together; none where it is of a thing as a whole.</summary>
    public static IReadOnlyList<string> Fields(string path)
        => path[(path.LastIndexOf('/') + 1)..] is var last && last.StartsWith('@') ? [] : [.. last.Split('+').Select(JobFlat.Unescape)];
}
