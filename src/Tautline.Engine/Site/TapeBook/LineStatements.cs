using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>What holds for a whole line wherever it is said of it: what it ties to, the hand of its fabric, what a repair keeps.</summary>
internal sealed class LineStatements(TapeBookState book)
{
    private const string TieForm = "tie finish to fence section 2.375-sch40 woven";

    private static readonly string[] parts = ["line-posts", "rail", "wire"];

    private TapeLine Open(TapeCursor statement) => book.Open ?? book.Begin(null, statement.Line, 1);

    public void Tie(TapeCursor statement)
    {
        var line = Open(statement);
        if (statement.OneOf("'start' or 'finish'", TieForm, "start", "finish") is not { } end) return;
        if (statement.OneOf("'to'", TieForm, "to") is null) return;
        if (statement.OneOf("'building', 'wall' or 'fence'", TieForm, TieIn.Building, TieIn.Wall, TieIn.Fence) is not { } kind) return;
        if (TieTo(kind, statement) is not { } tie) return;
        if (statement.Take("top"))
        {
            if (statement.Length() is not { } top) return;
            tie = tie with { Top = top };
        }
        statement.End();
        Once(line, $"tie {end}", statement);
        if (end == "start") line.TieStart = tie;
        else line.TieFinish = tie;
    }

    public void Fabric(TapeCursor statement)
    {
        var line = Open(statement);
        if (statement.OneOf("'left' or 'right'", "fabric left", "left", "right") is not { } side) return;
        statement.End();
        Once(line, "fabric", statement);
        line.FabricSide = side;
    }

    public void Keeps(TapeCursor statement)
    {
        const string form = "keeps line-posts rail";
        var line = Open(statement);
        Once(line, "keeps", statement);
        List<string> kept = [];
        do
        {
            var column = statement.Column;
            if (statement.OneOf("'line-posts', 'rail' or 'wire'", form, parts) is not { } part) return;
            if (kept.Contains(part)) statement.Problem(TapeTexts.ClauseTwice, column, part);
            kept.Add(part);
        }
        while (!statement.AtEnd);
        line.Keeps = kept;
    }

    /// <summary>Panels on stands belong to the job, not to a line.</summary>
    public void Temporary(TapeCursor statement)
    {
        var column = statement.Column;
        if (statement.Length() is not { } length) return;
        Length? panel = null;
        if (statement.Take("panel") && (panel = statement.Length()) is null) return;
        var closed = statement.Take("closed");
        var name = statement.Note();
        statement.End();
        if (length.Nanometres == 0 || panel is { Nanometres: 0 }) statement.Problem(TapeTexts.TemporaryZero, column);
        else book.AddTemporary(new TemporaryFence { Id = default, Name = name, Length = length, Panel = panel, Closed = closed });
    }

    private static TieIn? TieTo(string kind, TapeCursor statement)
    {
        if (kind != TieIn.Fence) return new TieIn { Kind = kind };
        if (statement.OneOf("'section'", TieForm, "section") is null || statement.Name(TieForm) is not { } section) return null;
        var fabric = statement.Take("woven") ? "woven" : statement.Take("bar") ? "bar" : null;
        return new TieIn { Kind = kind, Section = section, Fabric = fabric };
    }

    private static void Once(TapeLine line, string what, TapeCursor statement)
    {
        if (!line.Said.TryAdd(what, statement.Line)) statement.Problem(TapeTexts.LineSaidTwice, 1, what, line.Said[what]);
    }
}
