using Microsoft.AspNetCore.Identity;

namespace Tautline.Store.People;

/// <summary>Somebody who signs in. May belong to several companies.</summary>
public sealed class Person : IdentityUser<Guid>
{
    public Person() => Id = Guid.CreateVersion7();

    public string Name { get; set; } = "";

    public long Created { get; set; }
}
