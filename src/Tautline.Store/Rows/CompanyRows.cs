namespace Tautline.Store.Rows;

/// <summary>A row of one company. Nobody of another company ever sees it.</summary>
public interface IOfCompany
{
    Guid CompanyId { get; set; }
}

public sealed class Company
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    public required string Name { get; set; }

    public required long Created { get; init; }
}

/// <summary>That a person belongs to a company, and as what.</summary>
public sealed class Member : IOfCompany
{
    public Guid CompanyId { get; set; }

    public required Guid PersonId { get; init; }

    public required Role Role { get; set; }

    public required long Created { get; init; }

    /// <summary>When the person left; nothing where it has not.</summary>
    public long? Ended { get; set; }
}

/// <summary>A browser that somebody signed in with. Its cookie names it; what is shut out here is out with the next request.</summary>
public sealed class Device : IOfCompany
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    public Guid CompanyId { get; set; }

    public required Guid PersonId { get; init; }

    public required string Name { get; set; }

    public required long Created { get; init; }

    public required long Seen { get; set; }

    public long? ShutOut { get; set; }
}

/// <summary>An offer to join, good once. Of its token only the digest is kept.</summary>
public sealed class Invitation : IOfCompany
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    public Guid CompanyId { get; set; }

    public required string TokenHash { get; init; }

    public required Role Role { get; init; }

    public string Email { get; init; } = "";

    public required Guid By { get; init; }

    public required long Created { get; init; }

    public required long Expires { get; init; }

    public long? Accepted { get; set; }

    public long? Withdrawn { get; set; }
}

/// <summary>What a program signs in with in place of a person.</summary>
public sealed class ApiToken : IOfCompany
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    public Guid CompanyId { get; set; }

    public required string Name { get; init; }

    public required string TokenHash { get; init; }

    /// <summary>The most it may do; never more than its maker may at the time it is used.</summary>
    public required Role Role { get; init; }

    public required Guid By { get; init; }

    public required long Created { get; init; }

    public required long Expires { get; init; }

    public long? Used { get; set; }

    public long? Withdrawn { get; set; }
}

/// <summary>What was done, by whom. Only ever added.</summary>
public sealed class AuditRow : IOfCompany
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    public Guid CompanyId { get; set; }

    public required long At { get; init; }

    public Guid? PersonId { get; init; }

    public Guid? DeviceId { get; init; }

    /// <summary>'job.state', 'person.role' and the like.</summary>
    public required string Act { get; init; }

    /// <summary>What it was done to.</summary>
    public string Subject { get; init; } = "";

    public string Detail { get; init; } = "";
}
