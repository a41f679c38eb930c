using Microsoft.EntityFrameworkCore;
using Tautline.Store;
using Tautline.Store.People;
using Tautline.Store.Rows;

namespace Tautline.Server.Access;

/// <summary>The one company and person of a program without accounts, made when first asked for.</summary>
internal sealed class OwnCompany(StorePlace place, TimeProvider clock) : IDisposable
{
    private readonly SemaphoreSlim one = new(1);
    private Caller? caller;

    public void Dispose() => one.Dispose();

    public async Task<Caller> CallerAsync(CancellationToken cancel)
    {
        if (caller is { } known) return known;
        await one.WaitAsync(cancel);
        try
        {
            return caller ??= await FindAsync(cancel) ?? await MakeAsync(cancel);
        }
        finally
        {
            one.Release();
        }
    }

    private async Task<Caller?> FindAsync(CancellationToken cancel)
    {
        await using var store = place.Open();
        if (await Doors.OnlyCompanyAsync(store, cancel) is not { } company) return null;
        store.CompanyId = company.Id;
        var owner = await store.Members.Where(m => m.Role == Role.Owner && m.Ended == null).OrderBy(m => m.Created).FirstAsync(cancel);
        var person = await store.Users.SingleAsync(p => p.Id == owner.PersonId, cancel);
        return new(company.Id, company.Name, person.Id, person.Name, "", Role.Owner, null, "");
    }

    private async Task<Caller> MakeAsync(CancellationToken cancel)
    {
        var now = clock.GetUtcNow().UtcTicks;
        var company = new Company { Name = "", Created = now };
        var person = new Person { Created = now };
        await using var store = place.Open(company.Id);
        store.Companies.Add(company);
        store.Users.Add(person);
        store.Members.Add(new Member { PersonId = person.Id, Role = Role.Owner, Created = now });
        await store.SaveChangesAsync(cancel);
        return new(company.Id, "", person.Id, "", "", Role.Owner, null, "");
    }
}
