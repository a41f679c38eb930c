using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Gates: they stand below the leg they lie on and are measured from its start.</summary>
internal sealed class GateStatement(TapeBookState book)
{
    private const string Form = "gate walk 4' from 20'";
    private const string SlidingForm = "gate cantilever 20' from 30' run-back end";
    private const string OverheadForm = "gate overhead 24' from 30' run-back end post 4.000-sch40 leaf 1200 lb clearance 15'";

    private static readonly HashSet<string> fittings = new(StringComparer.Ordinal) { "run-back", "post", "leaf", "clearance" };

    /// <summary>Where the gate stands on its leg, as measured, and the columns its slips are told at.</summary>
    private sealed record Place(Length Opening, Length Measured, bool Centred, int OpeningColumn, int Column);

    public static bool Slides(string kind) => kind is Gate.Cantilever or Gate.Rolling or Gate.Overhead;

    /// <summary>Whether a part can be stated of a kind of gate.</summary>
    public static bool Has(string kind, string fitting) => fitting switch
    {
        "run-back" => Slides(kind),
        "leaf" => kind is Gate.Rolling or Gate.Overhead,
        "clearance" => kind == Gate.Overhead,
        _ => true,
    };

    public void Read(TapeCursor statement)
    {
        var line = book.Begun(TapeTexts.GateNoLeg, statement);
        const string kinds = "'walk', 'double', 'cantilever', 'rolling' or 'overhead'";
        if (statement.OneOf(kinds, Form, Gate.Walk, Gate.Double, Gate.Cantilever, Gate.Rolling, Gate.Overhead) is not { } kind) return;
        if (PlaceOf(statement) is not { } place) return;
        var bare = new Gate { Id = default, Leg = default, Kind = kind, NearFace = Length.Zero, Opening = place.Opening };
        if (Fitted(bare, statement) is not { } gate) return;
        statement.End();
        if (place.Opening.Metres == 0) statement.Problem(TapeTexts.GateZero, place.OpeningColumn);
        else if (line is { Broken: false }) Add(line, gate, place, statement);
    }

    private static Place? PlaceOf(TapeCursor statement)
    {
        var openingColumn = statement.Column;
        if (statement.Length() is not { } opening) return null;
        if (statement.OneOf("'from' or 'centred at'", Form, "from", "centred", "centered") is not { } how) return null;
        if (how != "from" && statement.OneOf("'at'", "gate double 16' centred at 38'", "at") is null) return null;
        var column = statement.Column;
        return statement.Length() is { } measured ? new Place(opening, measured, how != "from", openingColumn, column) : null;
    }

    /// <summary>The gate with its run-back, post, leaf and clearance; null where one cannot be read or is missing.</summary>
    private static Gate? Fitted(Gate gate, TapeCursor statement)
    {
        HashSet<string> said = new(StringComparer.Ordinal);
        while (fittings.Contains(statement.Next))
        {
            var word = statement.Next;
            if (!Has(gate.Kind, word)) statement.ProblemHere(TapeTexts.ClauseUnknown, word, $"gate {gate.Kind}", HintOf(gate.Kind));
            if (!said.Add(word)) statement.ProblemHere(TapeTexts.ClauseTwice, word);
            statement.Skip();
            if (Fit(gate, word, statement) is not { } fitted) return null;
            gate = fitted;
        }
        return Missing(gate) is var (what, form) && statement.AtEnd ? Lacking(what, form, statement) : gate;
    }

    private static string HintOf(string kind)
        => Slides(kind) ? $"It states: {string.Join(", ", fittings.Where(f => Has(kind, f)))}." : "Gates that swing state at most their 'post'.";

    private static Gate? Fit(Gate gate, string word, TapeCursor statement) => word switch
    {
        "run-back" => statement.OneOf("'start' or 'end'", SlidingForm, "start", "end") is { } to ? gate with { RunsBack = to } : null,
        "post" => statement.Name("post 4.000-sch40") is { } section ? gate with { Post = section } : null,
        "leaf" => statement.Weight() is { } mass ? gate with { LeafMass = mass } : null,
        _ => statement.Length() is { } clearance ? gate with { Clearance = clearance } : null,
    };

    /// <summary>What a gate cannot do without.</summary>
    private static (string What, string Form)? Missing(Gate gate)
        => Slides(gate.Kind) && gate.RunsBack is null ? ("'run-back'", SlidingForm)
            : gate.Kind is Gate.Rolling or Gate.Overhead && gate.Post is null ? ("'post'", OverheadForm)
            : null;

    private static Gate? Lacking(string what, string form, TapeCursor statement)
    {
        statement.Lacks(what, form);
        return null;
    }

    private void Add(TapeLine line, Gate gate, Place place, TapeCursor statement)
    {
        var leg = line.Legs[^1];
        var near = leg.Level(place.Measured) - (place.Centred ? place.Opening / 2 : Length.Zero);
        if (near.Nanometres < 0 || leg.Ends(near + place.Opening))
        {
            var (from, to) = (book.Show(near.Metres), book.Show((near + place.Opening).Metres));
            statement.Problem(TapeTexts.GateOffLeg, place.Column, from, to, book.Show(leg.LevelMetres));
            return;
        }
        book.Gates.Add(gate with
        {
            Id = new GateId($"{line.Id.Value}/gate{line.Next("gate")}"),
            Leg = line.LegId(line.Legs.Count),
            NearFace = near.Metres < 0 ? Length.Zero : near,
        });
    }
}
