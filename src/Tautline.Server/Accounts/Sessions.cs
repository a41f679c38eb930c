using System.Net;
using Microsoft.EntityFrameworkCore;
using Tautline.Server.Access;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.People;
using Tautline.Store.Rows;

namespace Tautline.Server.Accounts;

/// <summary>Begins and ends what a device is signed in with.</summary>
internal sealed class Sessions(ServerSettings settings, TimeProvider clock)
{
    public long Now => clock.GetUtcNow().UtcTicks;

    /// <summary>True where nobody between can read along.</summary>
    public static bool Safe(HttpRequest request) => request.IsHttps || request.Host.Host == "localhost" || (IPAddress.TryParse(request.Host.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));

    public IResult? Refused(HttpContext context)
        => !settings.Accounts ? Refuse.With(404, "own", "The program runs without accounts here.")
            // A token stands for a program, in no more than its own role: it never makes itself a way into its maker's account.
            : context.CallerOrNobody() is { DeviceId: null } ? Refuse.With(403, "role", "A token is for programs: accounts and passkeys are for people who are signed in.")
            : !Safe(context.Request) ? Refuse.With(403, "https", "Passwords and passkeys are only taken over HTTPS. docs/company.md shows the ways to a certificate.")
            : null;

    /// <summary>Begins a session for the company that was named, or the only one.</summary>
    public async Task<IResult> ChooseAsync(HttpContext context, StoreContext store, Person person, Guid? company, string? device, CancellationToken cancel)
    {
        var open = await Doors.CompaniesOfAsync(store, person.Id, cancel);
        if (open.Count == 0) return Refuse.With(403, "no-company", "This account belongs to no company any more. Ask the owner for an invitation.");
        if (company is null && open.Count > 1)
            return Refuse.With(409, "which", "You belong to several companies: say which.", ("companies", open.Select(c => new { c.Id, c.Name }).ToArray()));
        if ((company is null ? open[0] : open.FirstOrDefault(c => c.Id == company)) is not { } chosen) return Refuse.NotThere("company");
        return await BeginAsync(context, store, chosen.Id, person, device, "device.sign-in", cancel);
    }

    public async Task<IResult> BeginAsync(HttpContext context, StoreContext store, Guid company, Person person, string? name, string act, CancellationToken cancel)
    {
        store.CompanyId = company;
        var device = new Device { PersonId = person.Id, Name = Fields.Name(name) ?? "browser", Created = Now, Seen = Now };
        store.Devices.Add(device);
        store.Audit.Add(new AuditRow { At = Now, PersonId = person.Id, DeviceId = device.Id, Act = act, Subject = device.Name });
        await store.SaveChangesAsync(cancel);
        var caller = (await Doors.ByDeviceAsync(store, device.Id, Now, cancel))!;
        await CallerAccess.SignInAsync(context, device.Id);
        return Results.Ok(AccountApi.Answer(context, settings, "closed", caller));
    }

    public async Task EndAsync(HttpContext context, StoreContext store, CancellationToken cancel)
    {
        var (now, caller) = (Now, context.Caller());
        if (caller.DeviceId is { } device) await store.Devices.Where(d => d.Id == device).ExecuteUpdateAsync(set => set.SetProperty(d => d.ShutOut, now), cancel);
        if (settings.Accounts) await CallerAccess.SignOutAsync(context);
    }

    /// <summary>Shuts out all other devices of a person, of this company.</summary>
    public async Task EndOthersAsync(HttpContext context, StoreContext store, Guid person, CancellationToken cancel)
    {
        var (now, mine) = (Now, context.Caller().DeviceId);
        await store.Devices.Where(d => d.PersonId == person && d.Id != mine && d.ShutOut == null).ExecuteUpdateAsync(set => set.SetProperty(d => d.ShutOut, now), cancel);
        await Audited.AddAsync(store, context.Caller(), now, "person.password", "", "", cancel);
    }
}
