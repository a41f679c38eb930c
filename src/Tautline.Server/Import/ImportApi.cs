using System.Security.Cryptography;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Tautline.Engine.Jobs;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Store;
using Tautline.Store.Carrying;
using Tautline.Store.Rows;

namespace Tautline.Server.Import;

/// <param name="Taken">Rows that are in now, or would be where it was only tried.</param>
/// <param name="Already">Jobs that were there before: they stay as they are.</param>
internal sealed record JobsImported(int Taken, int Already, IReadOnlyList<ImportLine> Lines);

internal sealed record InvitedPerson(string Name, string Email, string Role, string Token);

internal sealed record PeopleImported(int Taken, IReadOnlyList<InvitedPerson> Invited, IReadOnlyList<ImportLine> Lines);

/// <summary>A company's existing lists, as CSV. With 'dry=true' it is only said what would happen.</summary>
internal static class ImportApi
{
    private const int Largest = 8 << 20;
    private static readonly TimeSpan invited = TimeSpan.FromDays(14);

    public static void MapImport(this IEndpointRouteBuilder api)
    {
        var import = api.MapGroup("/import").WithTags("import");
        import.MapPost("/jobs", JobsAsync).For(Role.Estimator).WithMetadata(new RequestSizeLimitAttribute(Largest));
        import.MapPost("/people", PeopleAsync).For(Role.Owner).WithMetadata(new RequestSizeLimitAttribute(Largest));
    }

    private static async Task<JobsImported> JobsAsync(HttpContext context, bool? dry, StorePlace place, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        var (jobs, lines) = JobList.Read(await BodyAsync(context, cancel));
        HashSet<string> there = [.. await store.Jobs.Select(j => j.JobId).ToListAsync(cancel)];
        List<ListedJob> fresh = [.. jobs.Where(j => !there.Contains(j.Job.Id.Value))];
        if (dry != true)
        {
            foreach (var listed in fresh)
            {
                var body = JobFile.Write(listed.Job);
                var (id, state) = (listed.Job.Id.Value, listed.State);
                await JobCarrier.PutAsync(place, context.Caller(), id, [new(ItemKind.Root, Convert.ToHexStringLower(SHA256.HashData(body)), body)], sessions.Now, cancel);
                await store.Jobs.Where(j => j.JobId == id).ExecuteUpdateAsync(set => set.SetProperty(j => j.State, state), cancel);
            }
            if (fresh.Count > 0) await Audited.AddAsync(store, context.Caller(), sessions.Now, "import.jobs", $"{fresh.Count}", "", cancel);
        }
        return new(fresh.Count, jobs.Count - fresh.Count, lines);
    }

    private static async Task<PeopleImported> PeopleAsync(HttpContext context, bool? dry, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        var (people, lines) = PeopleList.Read(await BodyAsync(context, cancel));
        if (dry == true || people.Count == 0) return new(people.Count, [], lines);
        List<InvitedPerson> made = [];
        foreach (var person in people)
        {
            var token = Secret.Make();
            store.Invitations.Add(new Invitation
            {
                TokenHash = Secret.Hash(token),
                Role = person.Role,
                Email = person.Email,
                By = context.Caller().PersonId,
                Created = sessions.Now,
                Expires = sessions.Now + invited.Ticks,
            });
            made.Add(new(person.Name, person.Email, Roles.Name(person.Role), token));
        }
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "import.people", $"{made.Count}", "", cancel);
        return new(made.Count, made, lines);
    }

    private static async Task<byte[]> BodyAsync(HttpContext context, CancellationToken cancel)
    {
        using var buffer = new MemoryStream();
        await context.Request.Body.CopyToAsync(buffer, cancel);
        return buffer.ToArray();
    }
}
