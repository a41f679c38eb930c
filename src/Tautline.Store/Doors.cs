using Microsoft.EntityFrameworkCore;
using Tautline.Store.Rows;

namespace Tautline.Store;

/// <summary>Who asks: a person of a company, in a role, on a device or by a token.</summary>
public sealed record Caller(Guid CompanyId, string Company, Guid PersonId, string Person, string Email, Role Role, Guid? DeviceId, string Device);

/// <summary>A company somebody may choose at sign-in.</summary>
public sealed record OpenCompany(Guid Id, string Name, Role Role);

/// <summary>
/// The questions that come before a company is known, and those of the program itself. Each asks for one thing by a secret, or by who somebody proved to be; nobody else goes past
/// the filter of <see cref="StoreContext"/>.
/// </summary>
public static class Doors
{
    /// <summary>How much later a device may have been seen than its row says: a row is not written at every request.</summary>
    public static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(5);

    /// <summary>A device unused for this long is signed out.</summary>
    public static readonly TimeSpan Unused = TimeSpan.FromDays(90);

    /// <summary>Who a device's cookie stands for; nothing where the device is shut out or long unused, or the person has left.</summary>
    public static async Task<Caller?> ByDeviceAsync(StoreContext store, Guid deviceId, long now, CancellationToken cancel)
    {
        var oldest = now - Unused.Ticks;
        var found = await (
            from device in store.Devices.IgnoreQueryFilters()
            where device.Id == deviceId && device.ShutOut == null && device.Seen > oldest
            join member in store.Members.IgnoreQueryFilters() on new { device.CompanyId, device.PersonId } equals new { member.CompanyId, member.PersonId }
            where member.Ended == null
            join company in store.Companies.IgnoreQueryFilters() on device.CompanyId equals company.Id
            join person in store.Users on device.PersonId equals person.Id
            select new { device.Seen, Caller = new Caller(company.Id, company.Name, person.Id, person.Name, person.Email ?? "", member.Role, device.Id, device.Name) }).AsNoTracking().FirstOrDefaultAsync(cancel);
        if (found is not null && found.Seen < now - SeenEvery.Ticks)
            await store.Devices.IgnoreQueryFilters().Where(d => d.Id == deviceId).ExecuteUpdateAsync(set => set.SetProperty(d => d.Seen, now), cancel);
        return found?.Caller;
    }

    /// <summary>Who a token stands for: its maker, in no higher role than both have.</summary>
    public static async Task<Caller?> ByTokenAsync(StoreContext store, string tokenHash, long now, CancellationToken cancel)
    {
        var found = await (
            from token in store.Tokens.IgnoreQueryFilters()
            where token.TokenHash == tokenHash && token.Withdrawn == null && token.Expires > now
            join member in store.Members.IgnoreQueryFilters() on new { token.CompanyId, PersonId = token.By } equals new { member.CompanyId, member.PersonId }
            where member.Ended == null
            join company in store.Companies.IgnoreQueryFilters() on token.CompanyId equals company.Id
            join person in store.Users on token.By equals person.Id
            select new { token.Id, token.Used, token.Name, token.Role, Most = member.Role, Company = company.Name, token.CompanyId, PersonId = person.Id, Person = person.Name, person.Email }).AsNoTracking().FirstOrDefaultAsync(cancel);
        if (found is null) return null;
        if (found.Used is not { } used || used < now - SeenEvery.Ticks)
            await store.Tokens.IgnoreQueryFilters().Where(t => t.Id == found.Id).ExecuteUpdateAsync(set => set.SetProperty(t => t.Used, now), cancel);
        return new(found.CompanyId, found.Company, found.PersonId, found.Person, found.Email ?? "", found.Role < found.Most ? found.Role : found.Most, null, found.Name);
    }

    /// <summary>An invitation that is still good, with the company's name.</summary>
    public static async Task<(Invitation Invitation, string Company)?> ByInvitationAsync(StoreContext store, string tokenHash, long now, CancellationToken cancel)
    {
        var found = await (
            from invitation in store.Invitations.IgnoreQueryFilters()
            where invitation.TokenHash == tokenHash && invitation.Accepted == null && invitation.Withdrawn == null && invitation.Expires > now
            join company in store.Companies.IgnoreQueryFilters() on invitation.CompanyId equals company.Id
            select new { invitation, company.Name }).FirstOrDefaultAsync(cancel);
        return found is null ? null : (found.invitation, found.Name);
    }

    /// <summary>A share link that is still good.</summary>
    public static Task<ShareLink?> ByLinkAsync(StoreContext store, string tokenHash, long now, CancellationToken cancel)
        => store.Links.IgnoreQueryFilters().AsNoTracking().FirstOrDefaultAsync(l => l.TokenHash == tokenHash && l.Withdrawn == null && l.Expires > now, cancel);

    /// <summary>The companies of somebody who has proved who it is.</summary>
    public static async Task<IReadOnlyList<OpenCompany>> CompaniesOfAsync(StoreContext store, Guid personId, CancellationToken cancel) => await (
        from member in store.Members.IgnoreQueryFilters()
        where member.PersonId == personId && member.Ended == null
        join company in store.Companies.IgnoreQueryFilters() on member.CompanyId equals company.Id
        orderby company.Name
        select new OpenCompany(company.Id, company.Name, member.Role)).ToListAsync(cancel);

    /// <summary>True where somebody signed up; the nameless company of a program without accounts is nobody's yet.</summary>
    public static Task<bool> AnyCompanyAsync(StoreContext store, CancellationToken cancel) => store.Companies.IgnoreQueryFilters().AnyAsync(c => c.Name != "", cancel);

    /// <summary>Gives the nameless company of a program that ran without accounts, with all its jobs, to whoever signs up first.</summary>
    /// <returns>The company; nothing where there is none or another was quicker.</returns>
    public static async Task<Guid?> ClaimAsync(StoreContext store, string name, CancellationToken cancel)
    {
        var nameless = await store.Companies.IgnoreQueryFilters().Where(c => c.Name == "").OrderBy(c => c.Created).Select(c => (Guid?)c.Id).FirstOrDefaultAsync(cancel);
        return nameless is { } id && await store.Companies.IgnoreQueryFilters().Where(c => c.Id == id && c.Name == "").ExecuteUpdateAsync(set => set.SetProperty(c => c.Name, name), cancel) == 1 ? id : null;
    }

    /// <summary>Ends one device's session, whichever company it was for.</summary>
    public static Task ShutOutAsync(StoreContext store, Guid device, long now, CancellationToken cancel)
        => store.Devices.IgnoreQueryFilters().Where(d => d.Id == device && d.ShutOut == null).ExecuteUpdateAsync(set => set.SetProperty(d => d.ShutOut, now), cancel);

    /// <summary>Ends all sessions of a person but one, in every company.</summary>
    public static Task ShutOutOthersAsync(StoreContext store, Guid person, Guid? mine, long now, CancellationToken cancel)
        => store.Devices.IgnoreQueryFilters().Where(d => d.PersonId == person && d.Id != mine && d.ShutOut == null).ExecuteUpdateAsync(set => set.SetProperty(d => d.ShutOut, now), cancel);

    /// <summary>The one company of a program without accounts.</summary>
    public static Task<Company?> OnlyCompanyAsync(StoreContext store, CancellationToken cancel) => store.Companies.IgnoreQueryFilters().OrderBy(c => c.Created).FirstOrDefaultAsync(cancel);

    /// <summary>A job whose index is older than its items, taken for a while so that no other process works on it too.</summary>
    public static async Task<(Guid CompanyId, string JobId)?> TakeStaleJobAsync(StoreContext store, long now, long until, CancellationToken cancel)
    {
        var stale = await store.Jobs.IgnoreQueryFilters().Where(j => j.IndexedNumber < j.LastNumber && j.IndexedBy < now).OrderBy(j => j.Changed)
            .Select(j => new { j.CompanyId, j.JobId, j.IndexedBy }).Take(8).ToListAsync(cancel);
        foreach (var job in stale)
        {
            var mine = await store.Jobs.IgnoreQueryFilters().Where(j => j.CompanyId == job.CompanyId && j.JobId == job.JobId && j.IndexedBy == job.IndexedBy)
                .ExecuteUpdateAsync(set => set.SetProperty(j => j.IndexedBy, until), cancel);
            if (mine == 1) return (job.CompanyId, job.JobId);
        }
        return null;
    }
}
