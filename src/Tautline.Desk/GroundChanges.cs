using System.Globalization;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>What is done about the ground under the lines.</summary>
public static class GroundChanges
{
    public static IReadOnlyList<string> Remedies { get; } = [LineFit.LongerPost, LineFit.Grading, LineFit.Trim, LineFit.Closure];

    private static readonly string[] usual = [LineFit.LongerPost, LineFit.Grading];

    public static Task FromAsync(Session session, LineId id, string? from) => Change(session, id, l => l with { Ground = (l.Ground ?? new()) with { From = from } });

    public static Task FitAsync(Session session, LineId id, Func<LineFit, LineFit> change) => Change(session, id, l => l with { Fit = change(l.Fit ?? new()) });

    public static Task<string> Gap(Session session, LineId id, string text) => Written.Size(session, text, (job, gap) => Changed(job, id, l => l with { Fit = (l.Fit ?? new()) with { Gap = gap } }));

    public static bool Allows(Line line, string remedy) => (line.Fit?.Remedies ?? usual).Contains(remedy);

    public static Task RemedyAsync(Session session, LineId id, string remedy) => Change(session, id, l =>
    {
        IReadOnlyList<string> now = l.Fit?.Remedies ?? usual;
        return l with { Fit = (l.Fit ?? new()) with { Remedies = now.Contains(remedy) ? [.. now.Where(r => r != remedy)] : [.. now, remedy] } };
    });

    public static Task ForgetAsync(Session session) => session.Apply(job => new EditOutcome(job with { Ground = null }, new(EditKind.Other, job.Ground?.Source.File ?? ""), []));

    public static Task AddShotAsync(Session session, LegId leg) => session.Apply(job => PlaceEdits.Shoot(job, new GroundShot { Leg = leg, At = Length.Zero, Height = Length.Zero }));

    public static Task<string> At(Session session, LineId line, int index, GroundShot shot, string text) =>
        Written.Length(session, text, (job, at) => PlaceEdits.Change(job, line, index, shot with { At = at }));

    public static Task<string> Height(Session session, LineId line, int index, GroundShot shot, string text) =>
        Written.MaybeLength(session, text, (job, height) => PlaceEdits.Change(job, line, index, shot with { Height = height }));

    public static Task<string> Rod(Session session, LineId line, int index, GroundShot shot, string text) =>
        Written.MaybeLength(session, text, (job, rod) => PlaceEdits.Change(job, line, index, shot with { Rod = rod }));

    public static Task RemoveShotAsync(Session session, LineId line, int index) => session.Apply(job => PlaceEdits.DeleteShot(job, line, index));

    /// <summary>A height or reading as surveys state it, to be written into a field.</summary>
    public static string Show(Length? height, UnitSystem units) => height is not { } there ? ""
        : units == UnitSystem.Metric ? there.Metres.ToString("0.###", CultureInfo.InvariantCulture) + " m"
        : there.Feet.ToString("0.###", CultureInfo.InvariantCulture) + "'";

    private static Task<bool> Change(Session session, LineId id, Func<Line, Line> change) => session.Apply(job => Changed(job, id, change));

    private static EditOutcome Changed(Job job, LineId id, Func<Line, Line> change) => LineEdits.Change(job, id, EditKind.ChangeLine, change);
}
