using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Knows every statement by its first word, and reads those about the job as a whole.</summary>
internal sealed class TapeStatements
{
    private readonly TapeBookState book;
    private readonly Dictionary<string, Action<TapeCursor>> byWord;

    public TapeStatements(TapeBookState book)
    {
        this.book = book;
        var (walk, stretches, lines) = (new WalkStatements(book), new StretchStatements(book), new LineStatements(book));
        var ground = new GroundStatements(book);
        byWord = new(StringComparer.Ordinal)
        {
            ["job"] = Job,
            ["units"] = Units,
            ["rules"] = RuleSet,
            ["as"] = AsSpecified,
            ["spec"] = new SpecStatement(book).Read,
            ["ten"] = TenPickets,
            ["measured"] = Measured,
            ["line"] = walk.Line,
            ["start"] = walk.Start,
            ["facing"] = walk.Facing,
            ["leg"] = walk.Leg,
            ["arc"] = walk.Arc,
            ["r"] = walk.Turn,
            ["l"] = walk.Turn,
            ["right"] = walk.Turn,
            ["left"] = walk.Turn,
            ["height"] = walk.Height,
            ["close"] = walk.Close,
            ["adjust"] = walk.Adjust,
            ["gate"] = new GateStatement(book).Read,
            ["pin"] = stretches.Pin,
            ["shot"] = ground.Shot,
            ["fit"] = ground.Fit,
            ["removal"] = stretches.Removal,
            ["clearing"] = stretches.Clearing,
            ["tie"] = lines.Tie,
            ["fabric"] = lines.Fabric,
            ["keeps"] = lines.Keeps,
            ["temporary"] = lines.Temporary,
        };
        foreach (var kind in StretchStatements.Obstacles.Keys) byWord.Add(kind, statement => stretches.Stretch(kind, statement));
    }

    public void Read(TapeCursor statement)
    {
        var word = statement.Next;
        if (!byWord.TryGetValue(word, out var read))
        {
            statement.ProblemHere(TapeTexts.WordUnknown, word, Spelling.Hint(word, byWord.Keys));
            return;
        }
        if (word is not ("r" or "l" or "right" or "left")) statement.Skip();
        read(statement);
    }

    private void Job(TapeCursor statement)
    {
        Once("job", statement);
        if (statement.Name("job \"Back yard\"") is not { } name) return;
        book.Name = name;
        statement.End();
    }

    private void Units(TapeCursor statement)
    {
        Once("units", statement);
        if (statement.OneOf("'us' or 'metric'", "units us", "us", "metric") is not { } units) return;
        book.Units = units == "us" ? UnitSystem.UsCustomary : UnitSystem.Metric;
        statement.End();
    }

    /// <summary>Whether a set of that name is at hand is known only where the job is planned.</summary>
    private void RuleSet(TapeCursor statement)
    {
        Once("rules", statement);
        if (statement.Name("rules caltrans") is not { } name) return;
        book.RuleSet = name;
        statement.End();
    }

    private void Measured(TapeCursor statement)
    {
        if (statement.OneOf("'level' or 'along'", "measured along", "level", "along") is not { } how) return;
        var along = how == "along";
        if (book.Open is { } open) open.Along = along;
        else book.Along = along;
        statement.End();
    }

    private void TenPickets(TapeCursor statement)
    {
        const string form = "ten pickets 14\" of NAME";
        if (statement.OneOf("'pickets'", form, "pickets") is null) return;
        var column = statement.Column;
        if (statement.Length() is not { } length || Calibrated(statement, form) is not { } spec) return;
        if (book.Said.TryGetValue($"ten pickets {spec.Id.Value}", out var line)) statement.Problem(TapeTexts.CalibrationTwice, column, spec.Name, line);
        else book.Calibrations.Add(new RollCalibration { Spec = spec.Id, TenPickets = length });
        book.Said[$"ten pickets {spec.Id.Value}"] = statement.Line;
        statement.End();
    }

    private Spec? Calibrated(TapeCursor statement, string form)
    {
        if (statement.Take("of"))
        {
            var column = statement.Column;
            if (statement.Name(form) is not { } name) return null;
            if (book.Specs.Find(name) is { } spec) return spec;
            statement.Problem(TapeTexts.SpecUnknown, column, name, book.Specs.Known);
            return null;
        }
        if (book.Specs.Only is { } only) return only;
        statement.ProblemHere(TapeTexts.CalibrationWhich, book.Specs.Count);
        return null;
    }

    private void AsSpecified(TapeCursor statement)
    {
        const string form = "as specified bay.max 8' \"drawing C-3\"";
        if (statement.OneOf("'specified'", form, "specified") is null) return;
        var column = statement.Column;
        if (statement.Name(form) is not { } key) return;
        if (RuleKeys.Find(key) is not { } rule)
        {
            statement.Problem(TapeTexts.RuleUnknown, column, key, Spelling.Hint(key, [.. RuleKeys.All.Select(r => r.Key)]));
            return;
        }
        if (Value(statement, rule) is not { } value) return;
        var source = statement.NextIsQuoted ? statement.Name(form)! : "";
        book.AsSpecified.Add(new RuleOverride { Rule = rule.Key, Value = value, Source = source });
        statement.End();
    }

    private static double? Length(TapeCursor statement, RuleKey rule)
    {
        var column = statement.Column;
        if (statement.Length() is not { } length) return null;
        if (rule.Allows(length.Metres)) return length.Metres;
        statement.Problem(TapeTexts.RuleValue, column, LengthText.Show(length, UnitSystem.UsCustomary), rule.Key, TapeRuleValue.Form(rule));
        return null;
    }

    private static double? Value(TapeCursor statement, RuleKey rule)
    {
        if (rule.Measure == RuleUnit.Length) return Length(statement, rule);
        var column = statement.Column;
        var text = statement.Rest();
        var value = TapeRuleValue.Read(rule, text);
        if (value is null) statement.Problem(TapeTexts.RuleValue, column, text, rule.Key, TapeRuleValue.Form(rule));
        return value;
    }

    private void Once(string what, TapeCursor statement)
    {
        if (book.Said.TryGetValue(what, out var line)) statement.Problem(TapeTexts.StatementTwice, 1, what, line);
        else book.Said.Add(what, statement.Line);
    }
}
