using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Tautline.Server.Access;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.People;
using Tautline.Store.Rows;

namespace Tautline.Server.Accounts;

internal sealed record SignUp(string Company, string Name, string Email, string? Password, string? Passkey, string? Device);

internal sealed record SignIn(string Email, string Password, string? Device, Guid? Company);

internal sealed record NewPassword(string? Old, string New);

internal sealed record Me(string Mode, string SignUp, bool Https, int Protocol, MePerson? Person, MeCompany? Company, MeDevice? Device);

internal sealed record MePerson(Guid Id, string Name, string Email, string Role);

internal sealed record MeCompany(Guid Id, string Name);

internal sealed record MeDevice(Guid? Id, string Name);

/// <summary>Accounts: who am I, sign up, in and out.</summary>
internal static class AccountApi
{
    /// <summary>What page and server say to each other. A page of another protocol is told to load itself again.</summary>
    public const int Protocol = 1;

    public static void MapAccount(this IEndpointRouteBuilder api)
    {
        api.MapGet("/me", MeAsync).AllowAnonymous();
        var account = api.MapGroup("/account").WithTags("account");
        account.MapPost("/sign-up", SignUpAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        account.MapPost("/sign-in", SignInAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        account.MapPost("/sign-out", SignOutAsync).For(Role.Crew);
        account.MapPost("/password", PasswordAsync).For(Role.Crew).RequireRateLimiting(Limits.SignIn);
        account.MapPasskeys();
    }

    private static async Task<Me> MeAsync(HttpContext context, ServerSettings settings, StoreContext store, CancellationToken cancel)
    {
        var signUp = !settings.Accounts ? "closed" : settings.SignUp == "first" && await Doors.AnyCompanyAsync(store, cancel) ? "closed" : settings.SignUp;
        return Answer(context, settings, signUp, context.CallerOrNobody());
    }

    public static Me Answer(HttpContext context, ServerSettings settings, string signUp, Caller? caller) => new(
        settings.Mode, signUp, Sessions.Safe(context.Request), Protocol,
        caller is null ? null : new(caller.PersonId, caller.Person, caller.Email, Roles.Name(caller.Role)),
        caller is null ? null : new(caller.CompanyId, caller.Company), caller is null ? null : new(caller.DeviceId, caller.Device));

    private static async Task<IResult> SignUpAsync(SignUp asked, HttpContext context, ServerSettings settings, Sessions sessions, Joining joining, StoreContext store, CancellationToken cancel)
    {
        if (sessions.Refused(context) is { } refused) return refused;
        if (settings.SignUp == "closed" || (settings.SignUp == "first" && await Doors.AnyCompanyAsync(store, cancel)))
            return Refuse.With(403, "closed", "No more companies are taken here. To join one, ask its owner for an invitation.");
        if (Fields.Name(asked.Company) is not { } company) return Refuse.Field("company", "The company needs a name of 1 to 100 characters.");
        return await joining.MakeAsync(context, new(asked.Name, asked.Email, asked.Password, asked.Passkey), async person =>
        {
            var id = await TakeOverAsync(store, company, sessions.Now, cancel);
            if (id is null)
            {
                var made = new Company { Name = company, Created = sessions.Now };
                id = store.CompanyId = made.Id;
                store.Companies.Add(made);
            }
            store.Members.Add(new Member { PersonId = person.Id, Role = Role.Owner, Created = sessions.Now });
            await store.SaveChangesAsync(cancel);
            return await sessions.BeginAsync(context, store, id.Value, person, asked.Device, "company.begin", cancel);
        }, cancel);
    }

    // What was kept before there were accounts goes on under the first of them.
    private static async Task<Guid?> TakeOverAsync(StoreContext store, string name, long now, CancellationToken cancel)
    {
        if (await Doors.ClaimAsync(store, name, cancel) is not { } id) return null;
        store.CompanyId = id;
        await store.Members.Where(m => m.Ended == null).ExecuteUpdateAsync(set => set.SetProperty(m => m.Ended, now), cancel);
        return id;
    }

    private static async Task<IResult> SignInAsync(SignIn asked, HttpContext context, Sessions sessions, UserManager<Person> people, SignInManager<Person> signIn, StoreContext store, CancellationToken cancel)
    {
        if (sessions.Refused(context) is { } refused) return refused;
        var person = await people.FindByNameAsync(asked.Email ?? "");
        if (person is null)
        {
            // As long as for a password that is wrong, so that nobody learns who has an account.
            people.PasswordHasher.VerifyHashedPassword(new Person(), Joining.SomeHash, asked.Password ?? "");
            sessions.Failed(context, "password", null);
            return Wrong();
        }
        var found = await signIn.CheckPasswordSignInAsync(person, asked.Password ?? "", lockoutOnFailure: true);
        if (!found.Succeeded) sessions.Failed(context, "password", person.Id);
        if (found.IsLockedOut) return Refuse.With(429, "locked", "Too many wrong passwords: wait a few minutes, or sign in with a passkey.");
        return found.Succeeded ? await sessions.ChooseAsync(context, store, person, asked.Company, asked.Device, cancel) : Wrong();
    }

    private static async Task<IResult> SignOutAsync(HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        await sessions.EndAsync(context, store, cancel);
        return Results.NoContent();
    }

    private static async Task<IResult> PasswordAsync(NewPassword asked, HttpContext context, UserManager<Person> people, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        var caller = context.Caller();
        if (caller.DeviceId is null) return Refuse.With(403, "role", "A password is changed by the person, signed in.");
        var person = (await people.FindByIdAsync(caller.PersonId.ToString()))!;
        if (await people.HasPasswordAsync(person) && await people.IsLockedOutAsync(person)) return Refuse.With(429, "locked", "Too many wrong passwords: wait a few minutes.");
        var done = await people.HasPasswordAsync(person) ? await people.ChangePasswordAsync(person, asked.Old ?? "", asked.New ?? "") : await people.AddPasswordAsync(person, asked.New ?? "");
        if (!done.Succeeded)
        {
            if (done.Errors.Any(e => e.Code == nameof(IdentityErrorDescriber.PasswordMismatch))) await people.AccessFailedAsync(person);
            return Joining.Told(done);
        }
        await sessions.EndOthersAsync(context, store, person.Id, cancel);
        return Results.NoContent();
    }

    private static IResult Wrong() => Refuse.With(401, "wrong", "The e-mail address or the password is wrong.");
}
