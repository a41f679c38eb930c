using Tautline.Engine.Problems;

namespace Tautline.Engine.Layout;

/// <summary>What can only be told once every post has its place.</summary>
public static class PostCheck
{
    public static void Check(IReadOnlyList<SetLine> lines, ProblemList problems)
    {
        foreach (var line in lines) Brackets(line, problems);
    }

    /// <summary>Fabric ends or turns on a terminal, and its pull goes into the anchors of the brackets.</summary>
    private static void Brackets(SetLine line, ProblemList problems)
    {
        foreach (var post in line.Posts.Where(p => p.Support == Support.Bracketed && p.Kind != PostKind.Line))
            problems.Add(ProblemCode.BracketTerminal, TerminalStage.At(line.Site, post.StationNm), TerminalStage.Name(post.Kind));
    }
}
