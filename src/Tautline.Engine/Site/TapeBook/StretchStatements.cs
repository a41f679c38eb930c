using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>What is marked along a leg besides gates: stretches for posts, posts that are settled, work. Measured from the start of the leg above.</summary>
internal sealed class StretchStatements(TapeBookState book)
{
    private static readonly HashSet<string> clauses = new(StringComparer.Ordinal) { "clear", "width", "depth", "cored", "plated", "bracketed" };

    /// <summary>How each kind of obstacle is written; the kinds are also the words of their statements.</summary>
    public static IReadOnlyDictionary<string, string> Obstacles { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        [Obstacle.NoDig] = "no-dig 31' to 33' 6\" clear 2' \"gas line\"",
        [Obstacle.Slab] = "slab 18' to 42' plated",
        [Obstacle.Rock] = "rock 5' to 9'",
        [Obstacle.Wall] = "wall 10' to 40' width 8\" plated",
        [Obstacle.Tree] = "tree 50' to 52' clear 1'",
        [Obstacle.Wet] = "wet 60' to 80'",
        [Obstacle.Swale] = "swale 70' to 76' depth 18\"",
        [Obstacle.Culvert] = "culvert 80' to 84' depth 2'",
    };

    private sealed record Range(Length From, Length To, int Column);

    /// <summary>Whether a part can be stated of a kind of obstacle.</summary>
    public static bool Has(string kind, string clause) => clause switch
    {
        "width" => kind == Obstacle.Wall,
        "depth" => Deep(kind) || kind == Obstacle.Wall,
        "bracketed" => kind == Obstacle.Wall,
        "cored" or "plated" => kind is Obstacle.Slab or Obstacle.Rock or Obstacle.Wall or Obstacle.Wet,
        _ => true,
    };

    /// <summary>A dip that is closed, which cannot do without its depth.</summary>
    private static bool Deep(string kind) => kind is Obstacle.Swale or Obstacle.Culvert;

    public void Stretch(string kind, TapeCursor statement)
    {
        var line = Begun(kind, statement);
        if (RangeOf(Obstacles[kind], statement) is not { } range) return;
        var bare = new Obstacle { Id = default, Leg = default, Kind = kind, From = range.From, To = range.To };
        if (Clauses(bare, statement) is not { } read) return;
        var obstacle = read with { Note = statement.Note() };
        statement.End();
        if (line is not { Broken: false } || !OnLeg(kind, range, line.Legs[^1], statement)) return;
        var (from, to) = (line.Legs[^1].Level(range.From), line.Legs[^1].Level(range.To));
        var id = new ObstacleId($"{line.Id.Value}/{kind}{line.Next(kind)}");
        book.Obstacles.Add(obstacle with { Id = id, Leg = line.LegId(line.Legs.Count), From = from, To = to });
    }

    public void Pin(TapeCursor statement)
    {
        var line = Begun("pin", statement);
        var column = statement.Column;
        if (statement.Length() is not { } at) return;
        var stands = statement.Take("stands");
        Length? top = null;
        if (statement.Take("top") && (top = statement.Length()) is null) return;
        statement.End();
        if (line is not { Broken: false }) return;
        var level = line.Legs[^1].Level(at);
        if (line.Legs[^1].Ends(level)) statement.Problem(TapeTexts.PinOffLeg, column, book.Show(level.Metres), book.Show(line.Legs[^1].LevelMetres));
        else book.Pins.Add(new Pin { Id = new PinId($"{line.Id.Value}/pin{line.Next("pin")}"), Leg = line.LegId(line.Legs.Count), At = level, Stands = stands, Top = top });
    }

    public void Removal(TapeCursor statement)
    {
        const string form = "removal 0' to 60' posts 7 pulled \"old chain link\"";
        Work(SiteWork.Removal, form, statement, (c, w) =>
        {
            int? posts = null;
            if (c.Take("posts") && (posts = c.Count("the number of old posts", form)) is null) return null;
            return w with { Posts = posts, PostsOut = c.Take("pulled") ? "pulled" : c.Take("cut") ? "cut" : null };
        });
    }

    public void Clearing(TapeCursor statement)
    {
        const string form = "clearing 0' to 60' width 4'";
        Work(SiteWork.Clearing, form, statement, (c, w) =>
        {
            if (c.OneOf("'width'", form, "width") is null) return null;
            var column = c.Column;
            if (c.Length() is not { } width) return null;
            if (width.Nanometres > 0) return w with { Width = width };
            c.Problem(TapeTexts.ClearingZero, column);
            return null;
        });
    }

    private void Work(string kind, string form, TapeCursor statement, Func<TapeCursor, SiteWork, SiteWork?> clausesOf)
    {
        var line = Begun(kind, statement);
        if (RangeOf(form, statement) is not { } range) return;
        if (clausesOf(statement, new SiteWork { Id = default, Leg = default, Kind = kind, From = range.From, To = range.To }) is not { } read) return;
        var work = read with { Note = statement.Note() };
        statement.End();
        if (line is not { Broken: false } || !OnLeg(kind, range, line.Legs[^1], statement)) return;
        var (from, to) = (line.Legs[^1].Level(range.From), line.Legs[^1].Level(range.To));
        book.Works.Add(work with { Id = new WorkId($"{line.Id.Value}/{kind}{line.Next(kind)}"), Leg = line.LegId(line.Legs.Count), From = from, To = to });
    }

    private TapeLine? Begun(string kind, TapeCursor statement)
        => kind == Obstacle.NoDig ? book.Begun(TapeTexts.NoDigNoLeg, statement) : book.Begun(TapeTexts.MarkNoLeg, statement, kind);

    private static Range? RangeOf(string form, TapeCursor statement)
    {
        var column = statement.Column;
        if (statement.Length() is not { } from || statement.OneOf("'to'", form, "to") is null) return null;
        return statement.Length() is { } to ? new Range(from, to, column) : null;
    }

    /// <summary>The obstacle with what it states; null where that cannot be read or the depth of a dip is missing.</summary>
    private static Obstacle? Clauses(Obstacle obstacle, TapeCursor statement)
    {
        HashSet<string> said = new(StringComparer.Ordinal);
        while (clauses.Contains(statement.Next))
        {
            var word = statement.Next;
            if (!Has(obstacle.Kind, word)) statement.ProblemHere(TapeTexts.ClauseUnknown, word, obstacle.Kind, $"It is written: {Obstacles[obstacle.Kind]}");
            if (!said.Add(Holds(word) ? "support" : word)) statement.ProblemHere(TapeTexts.ClauseTwice, word);
            statement.Skip();
            if (Clause(obstacle, word, statement) is not { } next) return null;
            obstacle = next;
        }
        if (!Deep(obstacle.Kind) || obstacle.Depth is { Nanometres: > 0 }) return obstacle;
        statement.Lacks("the depth", Obstacles[obstacle.Kind]);
        return null;
    }

    private static bool Holds(string word) => word is "cored" or "plated" or "bracketed";

    private static Obstacle? Clause(Obstacle obstacle, string word, TapeCursor statement)
    {
        if (Holds(word)) return obstacle with { Support = word };
        if (statement.Length() is not { } length) return null;
        return word switch
        {
            "width" => obstacle with { Width = length },
            "depth" => obstacle with { Depth = length },
            _ => obstacle with { Clearance = length },
        };
    }

    private bool OnLeg(string kind, Range range, WalkedLeg leg, TapeCursor statement)
    {
        if (range.To.Nanometres > range.From.Nanometres && !leg.Ends(leg.Level(range.To))) return true;
        var (from, to, level) = (book.Show(range.From.Metres), book.Show(range.To.Metres), book.Show(leg.LevelMetres));
        if (kind == Obstacle.NoDig) statement.Problem(TapeTexts.NoDigRange, range.Column, from, to, level);
        else statement.Problem(TapeTexts.MarkRange, range.Column, from, to, level, kind);
        return false;
    }
}
