using System.Buffers.Text;
using Microsoft.AspNetCore.Identity;
using Tautline.Server.Access;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.People;
using Tautline.Store.Rows;

namespace Tautline.Server.Accounts;

internal sealed record PasskeyStart(string? Name, string? Email);

internal sealed record PasskeyAdd(string Passkey, string? Name);

internal sealed record PasskeySignIn(string Passkey, string? Device, Guid? Company);

internal sealed record PasskeyRow(string Id, string Name, DateTimeOffset Created);

/// <summary>Passkeys: the browser's own questions and answers (Web Authentication), passed through as JSON text.</summary>
internal static class PasskeyApi
{
    public static void MapPasskeys(this IEndpointRouteBuilder account)
    {
        account.MapPost("/passkey/start", StartAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        account.MapPost("/passkey/sign-in/start", SignInStartAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        account.MapPost("/passkey/sign-in", SignInAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        account.MapGet("/passkeys", ListAsync).For(Role.Crew);
        account.MapPost("/passkeys", AddAsync).For(Role.Crew);
        account.MapDelete("/passkeys/{id}", RemoveAsync).For(Role.Crew);
    }

    public static IResult NotTaken() => Refuse.With(400, "passkey", "The passkey was not taken: it may have been asked for too long ago. Try again.");

    public static async Task<PasskeyAttestationResult?> AttestAsync(SignInManager<Person> signIn, string answer)
    {
        try
        {
            return await signIn.PerformPasskeyAttestationAsync(answer) is { Succeeded: true } made ? made : null;
        }
        catch (Exception slip) when (slip is InvalidOperationException or ArgumentException)
        {
            // Nothing was asked that this could answer.
            return null;
        }
    }

    private static async Task<IResult> StartAsync(PasskeyStart asked, HttpContext context, Sessions sessions, SignInManager<Person> signIn)
    {
        if (sessions.Refused(context) is { } refused) return refused;
        var caller = context.CallerOrNobody();
        var name = caller?.Email ?? Fields.Email(asked.Email);
        if (name is null) return Refuse.Field("email", "An e-mail address looks like name@example.com.");
        var options = await signIn.MakePasskeyCreationOptionsAsync(new()
        {
            Id = (caller?.PersonId ?? Guid.CreateVersion7()).ToString(),
            Name = name,
            DisplayName = caller?.Person ?? Fields.Name(asked.Name) ?? name,
        });
        return Results.Content(options, "application/json");
    }

    private static async Task<IResult> SignInStartAsync(HttpContext context, Sessions sessions, SignInManager<Person> signIn)
        => sessions.Refused(context) ?? Results.Content(await signIn.MakePasskeyRequestOptionsAsync(null), "application/json");

    private static async Task<IResult> SignInAsync(
        PasskeySignIn asked, HttpContext context, Sessions sessions, SignInManager<Person> signIn, UserManager<Person> people, StoreContext store, CancellationToken cancel)
    {
        if (sessions.Refused(context) is { } refused) return refused;
        PasskeyAssertionResult<Person> found;
        try
        {
            found = await signIn.PerformPasskeyAssertionAsync(asked.Passkey ?? "");
        }
        catch (Exception slip) when (slip is InvalidOperationException or ArgumentException)
        {
            return NotTaken();
        }
        if (!found.Succeeded)
        {
            sessions.Failed(context, "passkey", null);
            return Refuse.With(401, "passkey", "This passkey is not known here.");
        }
        await people.AddOrUpdatePasskeyAsync(found.User, found.Passkey);
        return await sessions.ChooseAsync(context, store, found.User, asked.Company, asked.Device, cancel);
    }

    private static async Task<IResult> ListAsync(HttpContext context, UserManager<Person> people)
        => Results.Ok((await people.GetPasskeysAsync((await MineAsync(context, people))!)).Select(p => new PasskeyRow(Base64Url.EncodeToString(p.CredentialId), p.Name ?? "", p.CreatedAt)).ToArray());

    private static async Task<IResult> AddAsync(PasskeyAdd asked, HttpContext context, Sessions sessions, SignInManager<Person> signIn, UserManager<Person> people, StoreContext store, CancellationToken cancel)
    {
        if (sessions.Refused(context) is { } refused) return refused;
        var person = (await MineAsync(context, people))!;
        if (await AttestAsync(signIn, asked.Passkey ?? "") is not { UserEntity: { } entity, Passkey: { } key } || entity.Id != person.Id.ToString()) return NotTaken();
        key.Name = Fields.Name(asked.Name) ?? "";
        if (!(await people.AddOrUpdatePasskeyAsync(person, key)).Succeeded) return NotTaken();
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "passkey.add", key.Name, "", cancel);
        return Results.NoContent();
    }

    private static async Task<IResult> RemoveAsync(string id, HttpContext context, Sessions sessions, UserManager<Person> people, StoreContext store, CancellationToken cancel)
    {
        if (sessions.Refused(context) is { } refused) return refused;
        var person = (await MineAsync(context, people))!;
        var keys = await people.GetPasskeysAsync(person);
        if (keys.FirstOrDefault(k => Base64Url.EncodeToString(k.CredentialId) == id) is not { } key) return Refuse.NotThere("passkey");
        if (keys.Count == 1 && !await people.HasPasswordAsync(person)) return Refuse.With(409, "last", "It is the only way into this account: set a password or add another passkey first.");
        await people.RemovePasskeyAsync(person, key.CredentialId);
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "passkey.remove", key.Name ?? "", "", cancel);
        return Results.NoContent();
    }

    private static Task<Person?> MineAsync(HttpContext context, UserManager<Person> people) => people.FindByIdAsync(context.Caller().PersonId.ToString());
}
