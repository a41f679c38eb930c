using Microsoft.AspNetCore.Components;
using Tautline.Desk;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.FieldScreens.Cards;

/// <summary>One of the foreman's cards.</summary>
public abstract class CardPane : FieldPane
{
    [CascadingParameter]
    public CardInputs Inputs { get; set; } = null!;

    protected UnitSystem Units => Session.Job.Units;

    protected bool Metric => Units == UnitSystem.Metric;

    protected string Mark(int line, int post) => PlanWords.Mark(line, Session.Plan.Lines[line].Posts[post]);

    /// <summary>The chosen run, or the first there is: the plan may have changed since it was chosen.</summary>
    protected (int Line, int Run)? Run => Held(Inputs.Run, l => l.Runs.Count);

    protected (int Line, int Gate)? GateAt => Held(Inputs.Gate, l => l.Gates.Count);

    private (int Line, int At)? Held((int Line, int At) chosen, Func<LinePlan, int> count)
    {
        IReadOnlyList<LinePlan> lines = Session.Plan.Lines;
        if (chosen.Line < lines.Count && chosen.At < count(lines[chosen.Line])) return chosen;
        for (int l = 0; l < lines.Count; l++)
            if (count(lines[l]) > 0)
                return (l, 0);
        return null;
    }

    /// <summary>A distance on the tape, as it is read.</summary>
    protected string Tape(Length at) => Tautline.Field.Cards.TapeMark.Text(at, Units);
}
