using System.Text.Json;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;
using Tautline.Field.Merging;
using Tautline.Store.Rows;

namespace Tautline.Server.Jobs;

/// <summary>What the office asks of a job, worked out from its items.</summary>
/// <param name="Head">The job file as it now is; empty where the pieces do not add up to one, and then <paramref name="Fault"/> says why.</param>
internal sealed record JobIndex(
    string Name, string Words, string Revision, byte[] Head, string Fault, int Conflicts, int Problems, int PostsSet, int Posts, double FabricHung, double Fabric, int Punch, string Ticket, long? TicketEnds)
{
    private const int LongestName = 200;
    private static readonly long Earliest = DateTimeOffset.MinValue.ToUnixTimeMilliseconds();
    private static readonly long Latest = DateTimeOffset.MaxValue.ToUnixTimeMilliseconds();

    public static JobIndex Of(IEnumerable<(ItemKind Kind, byte[] Body)> items)
    {
        List<Job> roots = [];
        List<JobChange> changes = [];
        List<LogEntry> entries = [];
        foreach (var (kind, body) in items)
        {
            if (kind == ItemKind.Root && JobFile.Read(body).Job is { } root) roots.Add(root);
            else if (kind == ItemKind.Change) changes.Add(ExchangeText.Read(JsonDocument.Parse(body).RootElement));
            else if (kind == ItemKind.Entry && LogJson.Read(body, out _) is { } entry) entries.Add(entry);
        }
        if (roots.Count == 0) return Faulty("", 0, "Nothing came yet that the job began from.");
        var shared = SharedJob.Begin(roots[0]).With(roots, changes);
        var head = shared.Head;
        return head is { Job: { } job, HasErrors: false } ? Of(job, head.ReadOnly, shared, LogState.Of(entries))
            : Faulty(roots[0].Name, shared.Conflicts.Count, string.Join(' ', head.Problems.Select(p => ProblemText.Message(p, roots[0].Units)).Take(3)));
    }

    private static JobIndex Faulty(string name, int conflicts, string fault) => new(name, name.ToLowerInvariant(), "", [], fault, conflicts, 0, 0, 0, 0, 0, 0, "", null);

    private static JobIndex Of(Job job, bool readOnly, SharedJob shared, LogState log)
    {
        var ticket = log.Standing.Where(e => e.Locate is not null).Select(e => e.Locate!).OrderBy(t => t.To).LastOrDefault();
        var plain = new JobIndex(
            Short(job.Name), Searched(job), shared.Revision, JobFile.Write(job), "", shared.Conflicts.Count, 0, 0, 0, 0, 0, 0, ticket?.Number ?? "", ticket is null ? null : DateTimeOffset.FromUnixTimeMilliseconds(Math.Clamp(ticket.To, Earliest, Latest)).UtcTicks);
        if (readOnly) return plain;
        var field = FieldPlan.Of(job, FenceCatalog.BuiltIn(), RuleSets.For(job), log);
        if (field.Now.HasErrors) return plain with { Problems = Open(field.Now) };
        var figures = BuildProgress.Of(field.Now, log).Figures.ToDictionary(f => f.Kind);
        ProgressFigure? posts = figures.GetValueOrDefault(ProgressKind.Posts), hung = figures.GetValueOrDefault(ProgressKind.Hung);
        return plain with
        {
            Problems = Open(field.Now),
            Punch = Inspection.Of(field.Now, log).Waiting,
            PostsSet = (int)(posts?.Done ?? 0),
            Posts = (int)(posts?.Of ?? 0),
            FabricHung = hung?.Done ?? 0,
            Fabric = hung?.Of ?? 0,
        };
    }

    private static int Open(Plan plan) => plan.Problems.Count(p => p.Severity != Severity.Note);

    // What came from an older list of the company's is searched too.
    private static string Searched(Job job)
        => string.Join(' ', job.Extra?.GetValueOrDefault("imported") is { ValueKind: JsonValueKind.Object } imported ? Texts(imported).Prepend(job.Name) : [job.Name]).ToLowerInvariant();

    // As they read, not as JSON writes them: there an accent or an apostrophe is a number.
    private static IEnumerable<string> Texts(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => value.EnumerateObject().SelectMany(p => Texts(p.Value)),
        JsonValueKind.Array => value.EnumerateArray().SelectMany(Texts),
        JsonValueKind.String => [value.GetString()!],
        JsonValueKind.Number => [value.GetRawText()],
        _ => [],
    };

    private static string Short(string name) => name.Length <= LongestName ? name : name[..LongestName];
}
