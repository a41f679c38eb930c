using Tautline.Engine.Plans;
using Tautline.Field.Building;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;

namespace Tautline.FieldScreens;

/// <summary>Inspection: checks, sign-offs, the punch list.</summary>
public sealed partial class FieldDesk
{
    private (Plan Plan, LogState Log, Inspection State)? looked;

    /// <summary>What was looked at on the plan on the desk.</summary>
    public Inspection Inspection
    {
        get
        {
            if (looked is not { } known || !ReferenceEquals(known.Plan, session.Plan) || !ReferenceEquals(known.Log, Log)) looked = known = (session.Plan, Log, Inspection.Of(session.Plan, Log));
            return known.State;
        }
    }

    /// <param name="post">Index in the line; nothing for the whole run, or for a gate.</param>
    /// <param name="measured">Metres, degrees or days; nothing where it was looked at.</param>
    public Task<bool> CheckAsync(CheckRow row, int? post, double? measured, bool passed, string note, IReadOnlyList<PhotoRef> with)
    {
        (Checked found, LogPlace place) = CheckMarking.Of(session.Plan, row.Item, row.Line, row.At, post, measured, passed);
        return AddAsync(e => e with { Kind = LogEntry.Check, Found = found, Place = place, Text = note.Trim(), Photos = with.Count > 0 ? with : null });
    }

    public Task<bool> SignAsync(InspectionStage stage, string by) => AddAsync(e => e with
    {
        Kind = LogEntry.Check,
        Found = new() { Item = Checked.SignOff, Passed = true, Stage = Inspection.Name(stage), By = by.Trim() },
    });

    public Task<bool> PunchAsync(string text, (int Line, Engine.Quantities.Length Station)? place, IReadOnlyList<PhotoRef> with) => AddAsync(e => e with
    {
        Kind = LogEntry.Punch,
        Text = text.Trim(),
        Punched = new() { State = PunchItem.Open },
        Place = place is { } at ? Marking.PlaceAt(session.Plan, at.Line, at.Station) : null,
        Photos = with.Count > 0 ? with : null,
    });

    public Task<bool> MoveAsync(PunchRow item, string state) => AddAsync(e => e with { Kind = LogEntry.Punch, Text = item.Opened.Text, Place = item.Opened.Place, Punched = new() { Of = item.Opened.Key, State = state } });
}
