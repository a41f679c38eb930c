using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Site;

/// <summary>Reads what a line ends at.</summary>
internal static class TieReader
{
    /// <summary>Section of the standing post a line ties to; nothing where it ends at a post of its own.</summary>
    public static Section? Read(TieIn? tie, Line line, string path, FenceCatalog catalog, ProblemList problems)
    {
        if (tie is null) return null;
        if (line.Closed) problems.Add(ProblemCode.TieClosed, new(path, line.Id));
        if (tie.Kind is TieIn.Building or TieIn.Wall) return null;
        if (tie.Kind != TieIn.Fence)
        {
            problems.Add(ProblemCode.TieKind, new($"{path}.kind", line.Id), tie.Kind);
            return null;
        }
        var section = tie.Section is null ? null : catalog.FindSection(tie.Section);
        if (section is null) problems.Add(ProblemCode.TieSection, new($"{path}.section", line.Id), tie.Section ?? "");
        return section;
    }
}
