using Tautline.Engine.Catalog;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>What is done to a spec. A part left to the rule set is chosen by it from the height.</summary>
public static class SpecChanges
{
    public static Task AddAsync(Session session) => session.Apply(job =>
    {
        Spec like = job.Specs.Count > 0 ? job.Specs[^1] : NewJob.UsualSpec;
        string id = Enumerable.Range(2, job.Specs.Count + 1).Select(n => $"spec{n}").First(n => job.Specs.All(s => s.Id.Value != n));
        return new EditOutcome(job with { Specs = [.. job.Specs, like with { Id = new(id), Name = "" }] }, new(EditKind.AddSpec, id), []);
    });

    /// <summary>Only a spec that no line has can be taken out.</summary>
    public static bool CanRemove(Job job, SpecId id) => job.Specs.Count > 1 && job.Stock.All(s => s.Spec != id)
        && job.Lines.All(l => l.Spec != id && l.Vertices.All(v => v.Leg?.Spec != id));

    public static Task RemoveAsync(Session session, SpecId id) => session.Apply(job =>
        new EditOutcome(job with { Specs = [.. job.Specs.Where(s => s.Id != id)], Calibrations = [.. job.Calibrations.Where(c => c.Spec != id)] }, new(EditKind.DeleteSpec, id.Value), []));

    public static Task ChangeAsync(Session session, SpecId id, Func<Spec, Spec> change) => session.Apply(job => Change(job, id, change));

    public static Task<string> Height(Session session, SpecId id, string text) => Written.Length(session, text, (job, height) => Change(job, id, s => s with { Height = height }));

    public static Task<string> Roll(Session session, SpecId id, string text) => Written.MaybeLength(session, text, (job, roll) => Change(job, id, s => s with { Roll = roll }));

    public static Task<string> CutFrom(Session session, SpecId id, string text) => Written.MaybeLength(session, text, (job, woven) => Change(job, id, s => s with { CutFrom = woven }));

    /// <summary>Fabric by its row in the catalogue: mesh and gauge together.</summary>
    public static Task FabricAsync(Session session, SpecId id, string key)
    {
        FabricRow? row = session.Catalog.Fabrics.FirstOrDefault(f => Key(f) == key);
        return row is null ? Task.CompletedTask : ChangeAsync(session, id, s => s with { Mesh = row.Mesh, Gauge = row.Gauge });
    }

    public static string Key(FabricRow row) => $"{row.Mesh.Nanometres}/{row.Gauge}";

    public static string Key(Spec spec) => $"{(spec.Mesh ?? Length.FromInches(2)).Nanometres}/{spec.Gauge}";

    /// <summary>Words of a choice that may be left out: the empty one means the rule set or the usual.</summary>
    public static string? Maybe(object? chosen) => chosen?.ToString() is { Length: > 0 } text ? text : null;

    private static EditOutcome Change(Job job, SpecId id, Func<Spec, Spec> change) =>
        new(job with { Specs = [.. job.Specs.Select(s => s.Id == id ? change(s) : s)] }, new(EditKind.ChangeSpec, id.Value), []);
}
