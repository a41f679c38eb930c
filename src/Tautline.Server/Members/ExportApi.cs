using System.IO.Compression;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Jobs;
using Tautline.Store;
using Tautline.Store.Rows;

namespace Tautline.Server.Members;

/// <summary>Everything a company has, as files that other programs open.</summary>
internal static class ExportApi
{
    public static void MapExport(this IEndpointRouteBuilder api) => api.MapGet("/export", WriteAsync).For(Role.Owner).WithTags("export").Produces(200, contentType: "application/zip");

    private static async Task WriteAsync(HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "company.export", "", "", cancel);
        context.Response.ContentType = "application/zip";
        context.Response.Headers.ContentDisposition = "attachment; filename=\"tautline-export.zip\"";
        await using var zip = await ZipArchive.CreateAsync(context.Response.BodyWriter.AsStream(), ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: null, cancel);
        await ListsAsync(zip, store, cancel);
        foreach (var job in await store.Jobs.OrderBy(j => j.JobId).Select(j => j.JobId).ToListAsync(cancel)) await JobAsync(zip, store, job, cancel);
    }

    private static async Task ListsAsync(ZipArchive zip, StoreContext store, CancellationToken cancel)
    {
        var jobs = await store.Jobs.AsNoTracking().OrderBy(j => j.JobId)
            .Select(j => new { j.JobId, j.Name, j.State, j.Created, j.Changed, j.Revision, j.Conflicts, j.Problems, j.PostsSet, j.Posts, j.Punch, j.Ticket, j.TicketEnds }).ToListAsync(cancel);
        await JsonAsync(zip, "jobs.json", jobs.Select(j => new
        {
            id = j.JobId,
            j.Name,
            State = JobStates.Name(j.State),
            Created = Times.Of(j.Created),
            Changed = Times.Of(j.Changed),
            j.Revision,
            j.Conflicts,
            j.Problems,
            j.PostsSet,
            j.Posts,
            j.Punch,
            j.Ticket,
            TicketEnds = Times.Of(j.TicketEnds),
            Folder = Folder(j.JobId),
        }), cancel);
        var people = await (from member in store.Members
                            join person in store.Users on member.PersonId equals person.Id
                            orderby person.Name
                            select new { person.Id, person.Name, person.Email, member.Role, member.Created, member.Ended }).ToListAsync(cancel);
        await JsonAsync(zip, "people.json", people.Select(p => new { p.Id, p.Name, p.Email, Role = Roles.Name(p.Role), Since = Times.Of(p.Created), Ended = Times.Of(p.Ended) }), cancel);
        var audit = await store.Audit.AsNoTracking().OrderBy(a => a.At).ToListAsync(cancel);
        await JsonAsync(zip, "audit.json", audit.Select(a => new { At = Times.Of(a.At), Person = a.PersonId, Device = a.DeviceId, a.Act, a.Subject, a.Detail }), cancel);
    }

    private static async Task JobAsync(ZipArchive zip, StoreContext store, string job, CancellationToken cancel)
    {
        var folder = Folder(job);
        if (await store.Jobs.Where(j => j.JobId == job).Select(j => j.Head).SingleAsync(cancel) is { Length: > 0 } head) await BytesAsync(zip, $"{folder}/job.json", head, cancel);
        await using (var lines = await zip.CreateEntry($"{folder}/items.jsonl").OpenAsync(cancel))
        {
            await foreach (var item in store.Items.AsNoTracking().Where(i => i.JobId == job).OrderBy(i => i.Number).AsAsyncEnumerable().WithCancellation(cancel))
            {
                await JsonSerializer.SerializeAsync(lines, new { number = item.Number, kind = ItemsApi.Name(item.Kind), received = Times.Of(item.Received), person = item.PersonId, body = JsonDocument.Parse(item.Body).RootElement }, cancellationToken: cancel);
                lines.WriteByte((byte)'\n');
            }
        }
        foreach (var hash in await store.Attachments.Where(a => a.JobId == job).Select(a => a.Hash).ToListAsync(cancel))
        {
            var photo = await store.Attachments.AsNoTracking().SingleAsync(a => a.JobId == job && a.Hash == hash, cancel);
            await BytesAsync(zip, $"{folder}/photos/{hash}{PhotosApi.Extension(photo.MediaType)}", photo.Bytes, cancel);
        }
    }

    // A job's name is whatever a device gave it: as a folder only what no path can be made of.
    private static string Folder(string job) => $"jobs/{string.Concat(job.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_'))}-{Secret.Hash(job)[..8]}";

    private static async Task JsonAsync<T>(ZipArchive zip, string name, T value, CancellationToken cancel)
    {
        await using var file = await zip.CreateEntry(name).OpenAsync(cancel);
        await JsonSerializer.SerializeAsync(file, value, JsonSerializerOptions.Web, cancel);
    }

    private static async Task BytesAsync(ZipArchive zip, string name, byte[] bytes, CancellationToken cancel)
    {
        await using var file = await zip.CreateEntry(name).OpenAsync(cancel);
        await file.WriteAsync(bytes, cancel);
    }
}
