using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Hosting;
using Tautline.Server.Members;
using Tautline.Store;
using Tautline.Store.Rows;

namespace Tautline.Server.Jobs;

/// <summary>A job in the office's list.</summary>
/// <param name="Cursor">Number of its last item: a device that has it has all.</param>
/// <param name="Ready">False while what follows is behind the items.</param>
/// <param name="FabricHung">Metres.</param>
internal sealed record JobRow(
    string Id, string Name, string State, DateTimeOffset Changed, long Cursor, bool Ready, string Fault, int Conflicts, int Problems, int PostsSet, int Posts, double FabricHung, double Fabric,
    int Punch, string Ticket, DateTimeOffset? TicketEnds);

internal sealed record StateChange(string State);

internal static class JobsApi
{
    private const int Most = 1000;

    public static void MapJobs(this IEndpointRouteBuilder api)
    {
        var jobs = api.MapGroup("/jobs").WithTags("jobs");
        jobs.MapGet("", ListAsync).For(Role.Crew);
        var job = jobs.MapGroup("/{job}");
        job.MapGet("", HeadAsync).For(Role.Crew);
        job.MapPut("/state", StateAsync).For(Role.Estimator);
        job.MapItems();
        job.MapPhotos();
        job.MapLinks();
    }

    private static async Task<IResult> ListAsync(HttpContext context, string? find, string? state, StoreContext store, CancellationToken cancel)
    {
        var jobs = store.Jobs.AsNoTracking();
        if (state is not null)
        {
            if (JobStates.Of(state) is not { } wanted) return Refuse.Field("state", $"A state is {JobStates.Words}.");
            jobs = jobs.Where(j => j.State == wanted);
        }
        foreach (var word in (find ?? "").ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(8)) jobs = jobs.Where(j => j.Words.Contains(word));
        var rows = await jobs.OrderByDescending(j => j.Changed).ThenBy(j => j.JobId).Take(Most).Select(j => new
        {
            j.JobId,
            j.Name,
            j.State,
            j.Changed,
            j.LastNumber,
            j.IndexedNumber,
            j.Fault,
            j.Conflicts,
            j.Problems,
            j.PostsSet,
            j.Posts,
            j.FabricHung,
            j.Fabric,
            j.Punch,
            j.Ticket,
            j.TicketEnds,
        }).ToListAsync(cancel);
        JobRow[] found =
        [
            .. rows.Select(j => new JobRow(
                j.JobId, j.Name, JobStates.Name(j.State), Times.Of(j.Changed), j.LastNumber, j.IndexedNumber >= j.LastNumber, j.Fault, j.Conflicts, j.Problems, j.PostsSet, j.Posts, j.FabricHung / 1000.0, j.Fabric / 1000.0,
                j.Punch, j.Ticket, Times.Of(j.TicketEnds))),
        ];
        return Unchanged(context, Tags.Of(found)) ?? Results.Ok(found);
    }

    private static async Task<IResult> HeadAsync(string job, HttpContext context, StoreContext store, CancellationToken cancel)
    {
        var found = await store.Jobs.AsNoTracking().Where(j => j.JobId == job).Select(j => new { j.Revision, j.Fault, j.IndexedNumber, j.LastNumber }).FirstOrDefaultAsync(cancel);
        if (found is null) return Refuse.NotThere("job");
        if (found.Revision.Length == 0)
            return found.IndexedNumber < found.LastNumber ? Refuse.With(409, "not-yet", "The job has just come and is not put together yet: ask again in a moment.") : Refuse.With(409, "job-fault", found.Fault);
        context.Response.Headers["Tautline-Number"] = found.IndexedNumber.ToString(CultureInfo.InvariantCulture);
        if (Unchanged(context, $"\"{found.Revision}\"") is { } same) return same;
        var head = await store.Jobs.AsNoTracking().Where(j => j.JobId == job).Select(j => j.Head).SingleAsync(cancel);
        return Results.Bytes(head, "application/json");
    }

    private static async Task<IResult> StateAsync(string job, StateChange asked, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (JobStates.Of(asked.State) is not { } state) return Refuse.Field("state", $"A state is {JobStates.Words}.");
        if (await store.Jobs.Where(j => j.JobId == job).Select(j => new { j.State }).FirstOrDefaultAsync(cancel) is not { } found) return Refuse.NotThere("job");
        await using var all = await store.BeginWriteAsync(cancel);
        await store.Jobs.Where(j => j.JobId == job).ExecuteUpdateAsync(set => set.SetProperty(j => j.State, state), cancel);
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "job.state", job, $"{JobStates.Name(found.State)} to {JobStates.Name(state)}", cancel);
        await all.CommitAsync(cancel);
        return Results.NoContent();
    }

    /// <summary>Tells a caller that has it already so; nothing where it has not.</summary>
    internal static IResult? Unchanged(HttpContext context, string tag)
    {
        context.Response.Headers.ETag = tag;
        context.Response.Headers.CacheControl = "private, no-cache";
        var known = context.Request.GetTypedHeaders().IfNoneMatch;
        return known.Any(k => k.Compare(EntityTagHeaderValue.Parse(tag), useStrongComparison: false)) ? Results.StatusCode(StatusCodes.Status304NotModified) : null;
    }
}

internal static class Tags
{
    public static string Of(JobRow[] rows)
    {
        var text = System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(rows);
        return string.Create(CultureInfo.InvariantCulture, $"W/\"{Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(text))[..32]}\"");
    }
}

/// <summary>States of a job as they are written.</summary>
internal static class JobStates
{
    public const string Words = "lead, quoted, won, building, done or lost";

    public static string Name(JobState state) => state.ToString().ToLowerInvariant();

    public static JobState? Of(string? name) => Enum.GetValues<JobState>().Where(s => Name(s) == name).Select(s => (JobState?)s).FirstOrDefault();
}
