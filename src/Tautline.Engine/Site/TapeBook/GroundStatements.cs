using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>How the ground lies under a line, and how the fence goes over it.</summary>
internal sealed class GroundStatements(TapeBookState book)
{
    private const string ShotForm = "shot 14' rod 5.05'";
    private const string FitForm = "fit stepped gap 1\" remedies longer-post grading break-posts no";

    private static readonly string[] remedies = [LineFit.LongerPost, LineFit.Trim, LineFit.Closure, LineFit.Grading];

    /// <summary>A place of the leg above, with its height, a rod reading, or both.</summary>
    public void Shot(TapeCursor statement)
    {
        var line = book.Begun(TapeTexts.MarkNoLeg, statement, "shot");
        var column = statement.Column;
        if (statement.Length() is not { } at || Readings(statement) is not { } shot) return;
        statement.End();
        if (line is not { Broken: false }) return;
        var level = line.Legs[^1].Level(at);
        if (line.Legs[^1].Ends(level)) statement.Problem(TapeTexts.ShotOffLeg, column, book.Show(level.Metres), book.Show(line.Legs[^1].LevelMetres));
        else line.Shots.Add(shot with { Leg = line.LegId(line.Legs.Count), At = level });
    }

    private static GroundShot? Readings(TapeCursor statement)
    {
        var shot = new GroundShot { Leg = default, At = default };
        while (!statement.AtEnd)
        {
            if (statement.OneOf("'height', 'rod' or 'again'", ShotForm, "height", "rod", "again") is not { } what || statement.Length() is not { } length) return null;
            shot = what switch { "height" => shot with { Height = length }, "rod" => shot with { Rod = length }, _ => shot with { Again = length } };
        }
        if (shot is { Height: null, Rod: null }) statement.Lacks("'height' or 'rod'", ShotForm);
        return shot is { Height: null, Rod: null } ? null : shot;
    }

    /// <summary>How the whole line goes over the ground.</summary>
    public void Fit(TapeCursor statement)
    {
        var line = book.Open ?? book.Begin(null, statement.Line, 1);
        if (!line.Said.TryAdd("fit", statement.Line)) statement.Problem(TapeTexts.LineSaidTwice, 1, "fit", line.Said["fit"]);
        if (statement.OneOf("'smooth', 'follow' or 'stepped'", FitForm, "smooth", "follow", "stepped") is not { } mode) return;
        if (Clauses(new LineFit { Mode = mode }, statement) is not { } fit) return;
        statement.End();
        line.Fit = fit;
    }

    private static LineFit? Clauses(LineFit fit, TapeCursor statement)
    {
        if (statement.Take("gap"))
        {
            if (statement.Length() is not { } gap) return null;
            fit = fit with { Gap = gap };
        }
        if (statement.Take("remedies"))
        {
            if (Named(statement) is not { } named) return null;
            fit = fit with { Remedies = named };
        }
        if (!statement.Take("break-posts")) return fit;
        return statement.OneOf("'yes' or 'no'", FitForm, "yes", "no") is { } may ? fit with { BreakPosts = may } : null;
    }

    private static List<string>? Named(TapeCursor statement)
    {
        if (statement.Take("none")) return [];
        List<string> named = [];
        while (remedies.FirstOrDefault(statement.Take) is { } one) named.Add(one);
        if (named.Count == 0) statement.Lacks("'longer-post', 'trim', 'closure', 'grading' or 'none'", FitForm);
        return named.Count == 0 ? null : named;
    }
}
