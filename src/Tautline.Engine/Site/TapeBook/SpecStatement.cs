using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>'spec NAME' on its own chooses a spec from the next leg on; with clauses it writes a new one out.</summary>
internal sealed class SpecStatement(TapeBookState book)
{
    private const string Form = "spec NAME height 6' mesh 2\" gauge 9 brace no";

    private static readonly Dictionary<string, Func<TapeCursor, Spec, Spec?>> clauses = new(StringComparer.Ordinal)
    {
        ["height"] = (c, s) => c.Length() is { } height ? s with { Height = height } : null,
        ["mesh"] = (c, s) => c.Length() is { } mesh ? s with { Mesh = mesh } : null,
        ["gauge"] = (c, s) => c.Name("gauge 9") is { } gauge ? s with { Gauge = gauge } : null,
        ["selvage"] = (c, s) => c.OneOf("KK, KT, TK or TT", "selvage KK", "kk", "kt", "tk", "tt") is { } selvage ? s with { Selvage = selvage.ToUpperInvariant() } : null,
        ["line-post"] = (c, s) => c.Name("line-post 2.375-sch40") is { } section ? s with { LinePost = section } : null,
        ["terminal-post"] = (c, s) => c.Name("terminal-post 2.875-sch40") is { } section ? s with { TerminalPost = section } : null,
        ["rail"] = (c, s) => c.Name("rail 1.660-sch40") is { } section ? s with { RailSection = section } : null,
        ["top"] = (c, s) => c.OneOf("'rail' or 'wire'", "top rail", "rail", "wire") is { } top ? s with { Top = top } : null,
        ["bottom"] = (c, s) => c.OneOf("'wire', 'rail' or 'none'", "bottom wire", "wire", "rail", "none") is { } bottom ? s with { Bottom = bottom } : null,
        ["middle"] = (c, s) => c.OneOf("'rail'", "middle rail", "rail") is { } middle ? s with { Middle = middle } : null,
        ["brace"] = (c, s) => c.OneOf("'yes' or 'no'", "brace no", "yes", "no") is { } brace ? s with { Brace = brace } : null,
        ["roll"] = (c, s) => c.Length() is { } roll ? s with { Roll = roll } : null,
        ["laced"] = SpecParts.Laced,
        ["line-support"] = SpecParts.LineSupport,
        ["terminal-support"] = SpecParts.TerminalSupport,
        ["barb"] = SpecParts.Barb,
        ["coating"] = SpecParts.Coating,
        ["colour"] = SpecParts.Colour,
        ["color"] = SpecParts.Colour,
        ["slats"] = SpecParts.Slats,
        ["screen"] = SpecParts.Screen,
        ["concertina"] = SpecParts.Concertina,
    };

    public void Read(TapeCursor statement)
    {
        var column = statement.Column;
        if (statement.Name(Form) is not { } name) return;
        if (statement.AtEnd) Choose(name, statement, column);
        else WriteOut(name, statement, column);
    }

    private void Choose(string name, TapeCursor statement, int column)
    {
        if (book.Specs.Find(name) is { } spec)
        {
            if (book.Open is { } open) open.Spec = spec;
            else statement.Problem(TapeTexts.SpecNoLine, column, name);
        }
        else if (book.Open is null)
        {
            statement.Problem(TapeTexts.SpecHeightMissing, column, name);
            book.Specs.Add(Start(name), statement.Line); // what uses it is then not told as well
        }
        else statement.Problem(TapeTexts.SpecUnknown, column, name, book.Specs.Known);
    }

    private void WriteOut(string name, TapeCursor statement, int column)
    {
        if (book.Specs.Find(name) is not null)
        {
            statement.Problem(TapeTexts.SpecTwice, column, name, book.Specs.LineOf(name));
            return;
        }
        var read = Clauses(statement, Start(name), out var whole);
        if (whole && read.Height.Metres == 0) statement.Problem(TapeTexts.SpecHeightMissing, column, name);
        book.Specs.Add(read, statement.Line); // also where a slip was told, for the same reason
    }

    private Spec Start(string name) => new() { Id = book.Specs.NewId(name), Name = name, Height = Length.Zero };

    private static Spec Clauses(TapeCursor statement, Spec spec, out bool whole)
    {
        HashSet<string> said = new(StringComparer.Ordinal);
        whole = false;
        while (!statement.AtEnd)
        {
            if (Clause(statement, spec, said) is not { } next) return spec;
            spec = next;
        }
        whole = true;
        return spec;
    }

    private static Spec? Clause(TapeCursor statement, Spec spec, HashSet<string> said)
    {
        var word = statement.Next;
        if (!clauses.TryGetValue(word, out var read))
        {
            statement.ProblemHere(TapeTexts.ClauseUnknown, word, "spec", Spelling.Hint(word, clauses.Keys));
            return null;
        }
        if (!said.Add(word == "color" ? "colour" : word)) statement.ProblemHere(TapeTexts.ClauseTwice, word);
        statement.Skip();
        return read(statement, spec);
    }
}
