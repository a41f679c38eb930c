using System.Net;
using Microsoft.EntityFrameworkCore;
using Tautline.Server.Access;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.People;
using Tautline.Store.Rows;

namespace Tautline.Server.Accounts;

/// <summary>Begins and ends what a device is signed in with.</summary>
internal sealed partial class Sessions(ServerSettings settings, TimeProvider clock, ILogger<Sessions> log)
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
        // A browser has one session: the one before ends, so that its cookie is worth nothing to whoever has a copy.
        if (context.CallerOrNobody()?.DeviceId is { } before) await Doors.ShutOutAsync(store, before, Now, cancel);
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

    /// <summary>Writes down that somebody did not get in, for whoever watches the server.</summary>
    public void Failed(HttpContext context, string by, Guid? person) => LogFailed(log, by, person?.ToString() ?? "unknown", context.Connection.RemoteIpAddress?.ToString() ?? "");

    /// <summary>Shuts out all other devices of a person, in all companies.</summary>
    public async Task EndOthersAsync(HttpContext context, StoreContext store, Guid person, CancellationToken cancel)
    {
        var (now, mine) = (Now, context.Caller().DeviceId);
        await Doors.ShutOutOthersAsync(store, person, mine, now, cancel);
        await Audited.AddAsync(store, context.Caller(), now, "person.password", "", "", cancel);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "A sign-in by {By} failed: person {Person}, from {Address}")]
    private static partial void LogFailed(ILogger log, string by, string person, string address);
}
