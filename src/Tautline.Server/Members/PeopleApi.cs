using Microsoft.EntityFrameworkCore;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.Rows;

namespace Tautline.Server.Members;

internal sealed record PersonRow(Guid Id, string Name, string Email, string Role, DateTimeOffset Since);

internal sealed record RoleChange(string Role);

internal sealed record DeviceRow(Guid Id, string Name, Guid Person, string PersonName, DateTimeOffset Created, DateTimeOffset Seen, bool Mine);

internal sealed record AuditEntry(Guid Id, DateTimeOffset At, string Person, string Act, string Subject, string Detail);

/// <summary>Who belongs to the company, on which devices, and what was done.</summary>
internal static class PeopleApi
{
    private const int AuditPage = 100;

    public static void MapPeople(this IEndpointRouteBuilder api)
    {
        api.MapGet("/people", PeopleAsync).For(Role.Owner).WithTags("people");
        api.MapPut("/people/{id:guid}", ChangeRoleAsync).For(Role.Owner).WithTags("people");
        api.MapDelete("/people/{id:guid}", EndAsync).For(Role.Owner).WithTags("people");
        api.MapGet("/devices", DevicesAsync).For(Role.Crew).WithTags("people");
        api.MapDelete("/devices/{id:guid}", ShutOutAsync).For(Role.Crew).WithTags("people");
        api.MapGet("/audit", AuditAsync).For(Role.Owner).WithTags("audit");
    }

    private static async Task<PersonRow[]> PeopleAsync(StoreContext store, CancellationToken cancel) => await (
        from member in store.Members
        where member.Ended == null
        join person in store.Users on member.PersonId equals person.Id
        orderby person.Name
        select new PersonRow(person.Id, person.Name, person.Email ?? "", Roles.Name(member.Role), Times.Of(member.Created))).ToArrayAsync(cancel);

    private static async Task<IResult> ChangeRoleAsync(Guid id, RoleChange asked, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (Roles.Of(asked.Role) is not { } role) return Refuse.Field("role", $"A role is {Roles.Words}.");
        await using var all = await OneAtATimeAsync(store, cancel);
        if (await store.Members.FirstOrDefaultAsync(m => m.PersonId == id && m.Ended == null, cancel) is not { } member) return Refuse.NotThere("person");
        if (role != Role.Owner && await IsLastOwnerAsync(store, member, cancel)) return LastOwner();
        var before = member.Role;
        member.Role = role;
        if (role != Role.Owner) await WithdrawInvitationsAsync(store, id, sessions.Now, cancel);
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "person.role", id.ToString(), $"{Roles.Name(before)} to {Roles.Name(role)}", cancel);
        await all.CommitAsync(cancel);
        return Results.NoContent();
    }

    private static async Task<IResult> EndAsync(Guid id, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        await using var all = await OneAtATimeAsync(store, cancel);
        if (await store.Members.FirstOrDefaultAsync(m => m.PersonId == id && m.Ended == null, cancel) is not { } member) return Refuse.NotThere("person");
        if (await IsLastOwnerAsync(store, member, cancel)) return LastOwner();
        var now = sessions.Now;
        member.Ended = now;
        await store.Devices.Where(d => d.PersonId == id && d.ShutOut == null).ExecuteUpdateAsync(set => set.SetProperty(d => d.ShutOut, now), cancel);
        await store.Tokens.Where(t => t.By == id && t.Withdrawn == null).ExecuteUpdateAsync(set => set.SetProperty(t => t.Withdrawn, now), cancel);
        await WithdrawInvitationsAsync(store, id, now, cancel);
        await Audited.AddAsync(store, context.Caller(), now, "person.end", id.ToString(), "", cancel);
        await all.CommitAsync(cancel);
        return Results.NoContent();
    }

    // Whoever may not invite any more has no invitations open: one of them could lead back in.
    private static Task<int> WithdrawInvitationsAsync(StoreContext store, Guid by, long now, CancellationToken cancel)
        => store.Invitations.Where(i => i.By == by && i.Accepted == null && i.Withdrawn == null).ExecuteUpdateAsync(set => set.SetProperty(i => i.Withdrawn, now), cancel);

    // Two owners who end each other at once would leave none: the company's row is held until the first is done.
    private static async Task<Microsoft.EntityFrameworkCore.Storage.IDbContextTransaction> OneAtATimeAsync(StoreContext store, CancellationToken cancel)
    {
        var all = await store.BeginWriteAsync(cancel);
        await store.Companies.ExecuteUpdateAsync(set => set.SetProperty(c => c.Created, c => c.Created), cancel);
        return all;
    }

    private static async Task<bool> IsLastOwnerAsync(StoreContext store, Member member, CancellationToken cancel)
        => member.Role == Role.Owner && !await store.Members.AnyAsync(m => m.PersonId != member.PersonId && m.Role == Role.Owner && m.Ended == null, cancel);

    private static IResult LastOwner() => Refuse.With(409, "last-owner", "The company would have no owner: make somebody else one first.");

    private static async Task<DeviceRow[]> DevicesAsync(HttpContext context, StoreContext store, CancellationToken cancel)
    {
        var caller = context.Caller();
        return await (
            from device in store.Devices
            where device.ShutOut == null && (caller.Role == Role.Owner || device.PersonId == caller.PersonId)
            join person in store.Users on device.PersonId equals person.Id
            orderby device.Seen descending
            select new DeviceRow(device.Id, device.Name, person.Id, person.Name, Times.Of(device.Created), Times.Of(device.Seen), device.Id == caller.DeviceId)).ToArrayAsync(cancel);
    }

    private static async Task<IResult> ShutOutAsync(Guid id, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        var caller = context.Caller();
        var device = await store.Devices.FirstOrDefaultAsync(d => d.Id == id && d.ShutOut == null, cancel);
        if (device is null || (caller.Role != Role.Owner && device.PersonId != caller.PersonId)) return Refuse.NotThere("device");
        device.ShutOut = sessions.Now;
        await Audited.AddAsync(store, caller, sessions.Now, "device.shut-out", device.Name, device.Id.ToString(), cancel);
        return Results.NoContent();
    }

    private static async Task<AuditEntry[]> AuditAsync(StoreContext store, DateTimeOffset? before, CancellationToken cancel)
    {
        var until = before?.UtcTicks ?? long.MaxValue;
        return await (
            from row in store.Audit
            where row.At < until
            orderby row.At descending, row.Id descending
            join person in store.Users on row.PersonId equals (Guid?)person.Id into known
            from person in known.DefaultIfEmpty()
            select new AuditEntry(row.Id, Times.Of(row.At), person == null ? "" : person.Name, row.Act, row.Subject, row.Detail)).Take(AuditPage).ToArrayAsync(cancel);
    }
}

/// <summary>Times of the store as they go over the wire.</summary>
internal static class Times
{
    public static DateTimeOffset Of(long ticks) => new(ticks, TimeSpan.Zero);

    public static DateTimeOffset? Of(long? ticks) => ticks is { } given ? Of(given) : null;
}
