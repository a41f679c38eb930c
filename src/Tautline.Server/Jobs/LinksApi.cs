using Microsoft.EntityFrameworkCore;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Hosting;
using Tautline.Server.Members;
using Tautline.Store;
using Tautline.Store.Rows;

namespace Tautline.Server.Jobs;

internal sealed record NewLink(string Paper, string? Language, int? Days);

internal sealed record LinkRow(Guid Id, string Paper, string Language, DateTimeOffset Expires, int Opened);

/// <summary>Links that show one paper of one job to whoever has them, until they expire.</summary>
internal static class LinksApi
{
    private const int MostDays = 90;
    private const int Busy = 2;

    // A paper takes a second of work: who has a link may not take the whole server with it.
    private static readonly SemaphoreSlim presses = new(Busy);

    public static void MapLinks(this IEndpointRouteBuilder job)
    {
        job.MapGet("/links", ListAsync).For(Role.Estimator);
        job.MapPost("/links", MakeAsync).For(Role.Estimator);
        job.MapDelete("/links/{id:guid}", WithdrawAsync).For(Role.Estimator);
    }

    public static void MapShared(this IEndpointRouteBuilder app) => app.MapGet("/s/{token}", OpenAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn).WithTags("shared");

    private static async Task<IResult> ListAsync(string job, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        var now = sessions.Now;
        return !await store.Jobs.AnyAsync(j => j.JobId == job, cancel) ? Refuse.NotThere("job")
            : Results.Ok(await store.Links.Where(l => l.JobId == job && l.Withdrawn == null && l.Expires > now).OrderBy(l => l.Expires)
                .Select(l => new LinkRow(l.Id, l.Paper, l.Language, Times.Of(l.Expires), l.Opened)).ToArrayAsync(cancel));
    }

    private static async Task<IResult> MakeAsync(string job, NewLink asked, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (Kind(asked.Paper) is null) return Refuse.Field("paper", $"A paper is {string.Join(", ", Enum.GetValues<PaperKind>().Select(Name))}.");
        if (!Phrases.Languages.Contains(asked.Language ?? Phrases.English)) return Refuse.Field("language", $"A language is {string.Join(" or ", Phrases.Languages)}.");
        if (asked.Days is < 1 or > MostDays) return Refuse.Field("days", $"A link is good for 1 to {MostDays} days.");
        if (!await store.Jobs.AnyAsync(j => j.JobId == job, cancel)) return Refuse.NotThere("job");
        var token = Secret.Make();
        var made = new ShareLink
        {
            JobId = job,
            TokenHash = Secret.Hash(token),
            Paper = asked.Paper,
            Language = asked.Language ?? Phrases.English,
            By = context.Caller().PersonId,
            Created = sessions.Now,
            Expires = sessions.Now + TimeSpan.FromDays(asked.Days ?? 14).Ticks,
        };
        store.Links.Add(made);
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "link.make", job, asked.Paper, cancel);
        return Results.Ok(new MadeSecret(made.Id, token, Times.Of(made.Expires)));
    }

    private static async Task<IResult> WithdrawAsync(string job, Guid id, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (await store.Links.FirstOrDefaultAsync(l => l.Id == id && l.JobId == job && l.Withdrawn == null, cancel) is not { } found) return Refuse.NotThere("link");
        found.Withdrawn = sessions.Now;
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "link.withdraw", job, found.Paper, cancel);
        return Results.NoContent();
    }

    private static async Task<IResult> OpenAsync(string token, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        context.Response.Headers["X-Robots-Tag"] = "noindex";
        if (!Sessions.Safe(context.Request)) return Refuse.With(403, "https", "A shared paper is only opened over HTTPS; this link was readable on its way: have it withdrawn.");
        if (await Doors.ByLinkAsync(store, Secret.Hash(token), sessions.Now, cancel) is not { } link) return Refuse.With(404, "link", "This link has expired or was withdrawn. Ask whoever sent it for another.");
        store.CompanyId = link.CompanyId;
        var job = await store.Jobs.AsNoTracking().Where(j => j.JobId == link.JobId).Select(j => new { j.Head, j.Fault }).SingleAsync(cancel);
        if (job.Head.Length == 0) return Refuse.With(409, "not-yet", "The job is not put together yet: try again in a moment.");
        await presses.WaitAsync(cancel);
        try
        {
            var (paper, fault) = await SharedPaper.PrintAsync(job.Head, Kind(link.Paper)!.Value, link.Language);
            if (paper is null) return Refuse.With(409, "plan", $"The job cannot be planned as it is ({fault}): tell whoever sent the link.");
            await store.Links.Where(l => l.Id == link.Id).ExecuteUpdateAsync(set => set.SetProperty(l => l.Opened, l => l.Opened + 1), cancel);
            context.Response.Headers.ContentDisposition = $"inline; filename=\"{link.Paper}.pdf\"";
            return Results.Bytes(paper, "application/pdf");
        }
        finally
        {
            presses.Release();
        }
    }

    private static string Name(PaperKind kind) => kind.ToString().ToLowerInvariant();

    private static PaperKind? Kind(string? name) => Enum.GetValues<PaperKind>().Where(k => Name(k) == name).Select(k => (PaperKind?)k).FirstOrDefault();
}
