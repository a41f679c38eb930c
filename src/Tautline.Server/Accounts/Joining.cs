using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.People;

namespace Tautline.Server.Accounts;

/// <param name="Passkey">What the browser answered to the options of a passkey, as text.</param>
internal sealed record NewPerson(string Name, string Email, string? Password, string? Passkey);

/// <summary>Makes an account together with what it is made for: both or neither.</summary>
internal sealed class Joining(UserManager<Person> people, SignInManager<Person> signIn, StoreContext store, TimeProvider clock)
{
    /// <summary>OWASP Password Storage Cheat Sheet: 210,000 rounds for PBKDF2 with HMAC-SHA-512 (from memory).</summary>
    public const int HashRounds = 210_000;

    /// <summary>Of a password nobody has; as slow to compare as a real one.</summary>
    public static string SomeHash { get; } = new PasswordHasher<Person>(Options.Create(new PasswordHasherOptions { IterationCount = HashRounds })).HashPassword(new(), Guid.NewGuid().ToString());

    public async Task<IResult> MakeAsync(HttpContext context, NewPerson asked, Func<Person, Task<IResult>> then, CancellationToken cancel)
    {
        if (Fields.Name(asked.Name) is not { } name) return Refuse.Field("name", "Your name has 1 to 100 characters.");
        if (Fields.Email(asked.Email) is not { } email) return Refuse.Field("email", "An e-mail address looks like name@example.com.");
        if (asked.Password is null && asked.Passkey is null) return Refuse.Field("password", "Choose a password or make a passkey.");
        var person = new Person { Name = name, Email = email, UserName = email, Created = clock.GetUtcNow().UtcTicks };
        UserPasskeyInfo? passkey = null;
        if (asked.Passkey is { } answer)
        {
            var made = await PasskeyApi.AttestAsync(signIn, answer);
            if (made is not { UserEntity: { } entity, Passkey: { } key } || !Guid.TryParse(entity.Id, out var id)) return PasskeyApi.NotTaken();
            (person.Id, passkey) = (id, key);
        }
        // Hashing is slow on purpose: nobody else waits for it to write.
        if (asked.Password is { } password && await HashAsync(person, password) is { } weak) return Told(weak);
        await using var all = await store.BeginWriteAsync(cancel);
        var done = await people.CreateAsync(person);
        if (!done.Succeeded) return Told(done);
        if (passkey is not null && !(await people.AddOrUpdatePasskeyAsync(person, passkey)).Succeeded) return PasskeyApi.NotTaken();
        var result = await then(person);
        if (result is IStatusCodeHttpResult { StatusCode: >= 400 }) return result;
        await all.CommitAsync(cancel);
        return result;
    }

    /// <returns>What is wrong with the password; nothing where it is taken.</returns>
    private async Task<IdentityResult?> HashAsync(Person person, string password)
    {
        foreach (var validator in people.PasswordValidators)
            if (await validator.ValidateAsync(people, person, password) is { Succeeded: false } weak) return weak;
        person.PasswordHash = people.PasswordHasher.HashPassword(person, password);
        return null;
    }

    public static IResult Told(IdentityResult fault)
    {
        if (fault.Errors.Any(e => e.Code is nameof(IdentityErrorDescriber.DuplicateUserName) or nameof(IdentityErrorDescriber.DuplicateEmail)))
            return Refuse.With(409, "email", "There is an account with this e-mail address: sign in with it.");
        var error = fault.Errors.First();
        var field = error.Code.StartsWith("Password", StringComparison.Ordinal) ? "password" : "account";
        return Refuse.Field(field, error.Code == nameof(IdentityErrorDescriber.PasswordMismatch) ? "The old password is wrong." : error.Description);
    }
}

/// <summary>Passwords that everybody tries first.</summary>
internal sealed class NotAmongTheFirst : IPasswordValidator<Person>
{
    private static readonly HashSet<string> tried = new(StringComparer.OrdinalIgnoreCase)
    {
        "password1234", "123456789012", "qwertyuiop12", "passwordpassword", "administrator", "letmeinletmein", "iloveyou1234", "welcome12345", "chainlinkfence", "tautlinetautline", "fencecontractor",
    };

    public Task<IdentityResult> ValidateAsync(UserManager<Person> manager, Person user, string? password)
    {
        var text = password ?? "";
        var weak = tried.Contains(text) || text.Distinct().Count() < 5
            || (user.Email is { Length: > 0 } email && text.Contains(email.Split('@')[0], StringComparison.OrdinalIgnoreCase) && email.Split('@')[0].Length > 3);
        return Task.FromResult(weak ? IdentityResult.Failed(new IdentityError { Code = "PasswordEasy", Description = "This password is one of the first that are tried: take several words that have nothing to do with each other." }) : IdentityResult.Success);
    }
}
