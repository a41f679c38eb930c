using System.Globalization;
using Tautline.Documents.Words;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;

namespace Tautline.Desk;

/// <summary>What is done in the table of rolls at hand.</summary>
public static class StockChanges
{
    public static Task AddAsync(Session session, Spec spec) => session.Apply(job =>
    {
        string id = Enumerable.Range(1, job.Stock.Count + 1).Select(n => $"rolls{n}").First(n => job.Stock.All(s => s.Id.Value != n));
        var stock = new RollStock { Id = new(id), Spec = spec.Id, Length = spec.Roll ?? session.Plan.Basis.Rules.RollLength.Length };
        return Done(job with { Stock = [.. job.Stock, stock] }, id);
    });

    public static Task<string> Length(Session session, RollStock stock, string text) =>
        Written.Length(session, text, (job, length) => Change(job, stock, s => s with { Length = length }));

    /// <summary>How many there are; empty where as many as are wanted can be had.</summary>
    public static Task<string> Count(Session session, RollStock stock, string text, Phrases say)
    {
        if (text.Trim().Length == 0) return Written.EditAsync(session, job => Change(job, stock, s => s with { Count = null }));
        return int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is > 0 and <= 100_000
            ? Written.EditAsync(session, job => Change(job, stock, s => s with { Count = count }))
            : Task.FromResult(say["stock.countWrong"]);
    }

    public static Task<string> Lot(Session session, RollStock stock, string text) => Written.EditAsync(session, job => Change(job, stock, s => s with { Lot = text.Trim() }));

    public static Task RemoveAsync(Session session, RollStock stock) =>
        session.Apply(job => Done(job with { Stock = [.. job.Stock.Where(s => s.Id != stock.Id)] }, stock.Id.Value));

    private static EditOutcome Change(Job job, RollStock stock, Func<RollStock, RollStock> change) =>
        Done(job with { Stock = [.. job.Stock.Select(s => s.Id == stock.Id ? change(s) : s)] }, stock.Id.Value);

    private static EditOutcome Done(Job job, string id) => new(job, new EditLabel(EditKind.Other, id), []);
}
