using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>
/// Reads one statement from left to right. What is asked for and not there is told once, at its column, and comes back as
/// null; the caller then gives the statement up.
/// </summary>
internal sealed class TapeCursor(string line, int number, IReadOnlyList<TapeToken> tokens, TapeProblems problems)
{
    private const double LargestMetres = 1_000_000;

    /// <summary>Words that end a length, a slope or a bearing.</summary>
    private static readonly HashSet<string> clauses = new(StringComparer.OrdinalIgnoreCase)
    {
        "from", "to", "at", "centred", "centered", "clear", "up", "down", "level", "bearing", "within", "of", "east", "west", "north",
        "south", "height", "mesh", "gauge", "selvage", "line-post", "terminal-post", "rail", "top", "bottom", "brace", "roll", "radius", "length", "turn",
        "run-back", "post", "leaf", "clearance", "support", "cored", "plated", "bracketed", "width", "depth", "coating", "colour", "color", "slats", "lock",
        "screen", "screen-roll", "concertina", "ties", "middle", "laced", "barb", "height-is", "line-support", "terminal-support", "stands",
        "posts", "pulled", "cut", "panel", "closed",
    };

    private static readonly HashSet<string> units = new(StringComparer.OrdinalIgnoreCase)
    {
        "ft", "foot", "feet", "in", "inch", "inches", "m", "cm", "mm", "metre", "metres", "meter", "meters", "ftUS", "usft",
    };

    private int at;

    public int Line => number;

    public bool AtEnd => at >= tokens.Count;

    /// <summary>Column, from 1, of the next word or of the end of the line.</summary>
    public int Column => AtEnd ? EndColumn : tokens[at].Start + 1;

    /// <summary>The next word in small letters; empty at the end and before a quoted name.</summary>
    public string Next => AtEnd || tokens[at].Quoted ? "" : tokens[at].Text.ToLowerInvariant();

    public bool NextIsQuoted => !AtEnd && tokens[at].Quoted;

    private int EndColumn => tokens.Count == 0 ? 1 : tokens[^1].End + 1;

    public void Problem(TapeText text, int column, params object[] figures) => problems.Add(text, number, column, figures);

    /// <summary>Tells a problem of the next word. Not an overload of the one with a column: a figure would pass for one.</summary>
    public void ProblemHere(TapeText text, params object[] figures) => problems.Add(text, number, Column, figures);

    public void Skip() => at++;

    /// <summary>Takes the word if it is the next one.</summary>
    public bool Take(string word)
    {
        if (Next != word) return false;
        at++;
        return true;
    }

    /// <summary>Takes one of the words, or tells what belongs here and how the statement is written.</summary>
    public string? OneOf(string what, string form, params ReadOnlySpan<string> words)
    {
        foreach (var word in words)
            if (Take(word)) return word;
        Lacks(what, form);
        return null;
    }

    /// <summary>Tells that something belongs here and is missing, or that something else stands in its place.</summary>
    public void Lacks(string what, string form)
    {
        if (AtEnd) ProblemHere(TapeTexts.WordMissing, what, form);
        else ProblemHere(TapeTexts.WordExpected, tokens[at].Text, what, form);
    }

    /// <summary>A name in quotes, or one word.</summary>
    public string? Name(string form)
    {
        if (!AtEnd && !string.IsNullOrWhiteSpace(tokens[at].Text)) return tokens[at++].Text;
        Lacks("a name", form);
        return null;
    }

    /// <summary>Tells what stands after the end of the statement.</summary>
    public void End()
    {
        if (!AtEnd) ProblemHere(TapeTexts.TextAfter, tokens[at].Text);
    }

    /// <summary>A length of zero or more, with its unit.</summary>
    public Length? Length()
    {
        if (!StartsFigure())
        {
            if (AtEnd) ProblemHere(TapeTexts.LengthMissing);
            else ProblemHere(TapeTexts.LengthExpected, tokens[at].Text);
            return null;
        }
        var column = Column;
        return Length(Span(LengthEnd()), column);
    }

    /// <summary>A slope without a sign, at most 1:1.</summary>
    public double? Slope()
    {
        var column = Column;
        var text = Span(ClauseEnd());
        if (SlopeSlip(text) is { } slip)
        {
            Problem(slip, column, text);
            return null;
        }
        var parsed = SlopeText.Parse(text.ToLowerInvariant());
        if (Told(parsed, TapeTexts.SlopeBad, column) is not { } slope) return null;
        if (Math.Abs(slope.Ratio) <= 1 + 1e-9) return Math.Min(1, slope.Ratio);
        Problem(TapeTexts.SlopeSteep, column, Math.Round(slope.Ratio * 100, 1));
        return null;
    }

    public Direction? Bearing()
    {
        var column = Column;
        var text = Span(BearingEnd());
        if (text.Length > 0) return Told(BearingText.Parse(text), TapeTexts.BearingBad, column);
        ProblemHere(TapeTexts.BearingMissing);
        return null;
    }

    /// <summary>The whole statement as a turn: degrees, right positive.</summary>
    public double? Turn()
    {
        var column = Column;
        if (Told(AngleText.Parse(Span(tokens.Count)), TapeTexts.TurnBad, column) is not { } degrees) return null;
        if (Math.Abs(degrees) is > 0 and < 180) return degrees;
        Problem(TapeTexts.TurnRange, column, degrees);
        return null;
    }

    /// <summary>An angle without a hand, as an arc turns.</summary>
    public double? Angle()
    {
        const string hand = "R ";
        var column = Column;
        var text = Span(ClauseEnd());
        if (text.Length > 0) return Told(AngleText.Parse(hand + text), TapeTexts.TurnBad, column - hand.Length);
        ProblemHere(TapeTexts.AngleMissing);
        return null;
    }

    /// <summary>A plain number of zero or more.</summary>
    public double? Number(string what, string form)
    {
        const NumberStyles plain = NumberStyles.AllowDecimalPoint;
        if (!NextIsQuoted && double.TryParse(Next, plain, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
        {
            at++;
            return value;
        }
        Lacks(what, form);
        return null;
    }

    /// <summary>How many: a whole number.</summary>
    public int? Count(string what, string form)
    {
        if (!NextIsQuoted && int.TryParse(Next, NumberStyles.None, CultureInfo.InvariantCulture, out var value))
        {
            at++;
            return value;
        }
        Lacks(what, form);
        return null;
    }

    /// <summary>A weight above zero, with its unit; kilograms.</summary>
    public double? Weight()
    {
        var column = Column;
        var text = Span(ClauseEnd());
        var read = TapeWeight.Read(text);
        if (read is null) Problem(TapeTexts.WeightBad, column, text);
        return read;
    }

    /// <summary>A note in quotes at the end of a statement; empty where there is none.</summary>
    public string Note() => NextIsQuoted ? tokens[at++].Text : "";

    /// <summary>Everything up to the next quoted name or the end.</summary>
    public string Rest() => Span(QuoteOrEnd(at));

    private static TapeText? SlopeSlip(string text)
        => text.Length == 0 ? TapeTexts.SlopeMissing
            : text[0] is '-' or '+' ? TapeTexts.SlopeNegative
            : text.All(c => char.IsAsciiDigit(c) || c is '.') ? TapeTexts.SlopeUnit : null;

    private Length? Length(string text, int column)
    {
        if (LengthSlip(text) is var (slip, offset))
        {
            Problem(slip, column + offset, text[offset..]);
            return null;
        }
        if (Told(LengthText.Parse(text), TapeTexts.LengthBad, column) is not { } length) return null;
        if (length.Metres <= LargestMetres) return length;
        Problem(TapeTexts.LengthHuge, column, text);
        return null;
    }

    /// <summary>The slips that are told in our own words, and where in the text they are.</summary>
    private static (TapeText Slip, int Offset)? LengthSlip(string text)
    {
        if (text[0] == '-') return (TapeTexts.LengthNegative, 0);
        if (text.All(c => char.IsAsciiDigit(c) || c is '.' or '/' or ' ')) return (TapeTexts.UnitMissing, 0);
        var unit = text.Length;
        while (unit > 0 && char.IsLetter(text[unit - 1])) unit--;
        return unit == text.Length || units.Contains(text[unit..]) ? null : (TapeTexts.UnitUnknown, unit);
    }

    /// <summary>The value, or null after telling what the reader of quantities found, at its own place.</summary>
    private T? Told<T>(Parsed<T> parsed, TapeText slip, int column) where T : struct
    {
        if (parsed.Ok) return parsed.Value;
        Problem(slip, column + parsed.Problem!.Position, parsed.Problem.Message, parsed.Problem.Hint);
        return null;
    }

    private bool StartsFigure() => !AtEnd && !tokens[at].Quoted && (char.IsAsciiDigit(tokens[at].Text[0]) || tokens[at].Text[0] is '-' or '+' or '.');

    /// <summary>A length goes on with figures, and with one word where the figure before it lacks a unit.</summary>
    private int LengthEnd()
    {
        var end = at;
        for (var open = false; end < tokens.Count && !tokens[end].Quoted; end++)
        {
            var text = tokens[end].Text;
            var figure = char.IsAsciiDigit(text[0]) || text[0] is '-' or '+' or '.' or '/';
            if (!figure && !(open && !clauses.Contains(text) && char.IsLetter(text[0]))) break;
            open = figure && char.IsAsciiDigit(text[^1]);
        }
        return end;
    }

    private int ClauseEnd()
    {
        var end = at;
        while (end < tokens.Count && !tokens[end].Quoted && !clauses.Contains(tokens[end].Text)) end++;
        return end;
    }

    /// <summary>A bearing may itself be 'north' or 'east'; only the other clauses of a leg end it.</summary>
    private int BearingEnd()
    {
        var end = at;
        while (end < tokens.Count && !tokens[end].Quoted && tokens[end].Text.ToLowerInvariant() is not ("up" or "down" or "level" or "bearing")) end++;
        return end;
    }

    private int QuoteOrEnd(int from)
    {
        var end = from;
        while (end < tokens.Count && !tokens[end].Quoted) end++;
        return end;
    }

    /// <summary>The text up to a word, as it stands in the line with plain marks; the cursor moves behind it.</summary>
    private string Span(int end)
    {
        if (end <= at) return "";
        var text = TapeScanner.Plain(line[tokens[at].Start..tokens[end - 1].End]);
        at = end;
        return text;
    }
}
