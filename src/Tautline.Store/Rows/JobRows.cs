namespace Tautline.Store.Rows;

/// <summary>A job: what the office asks over all jobs, and the revision it is at. All but <see cref="State"/> and <see cref="LastNumber"/> is worked out from its items.</summary>
public sealed class StoredJob : IOfCompany
{
    public const int LongestId = 200;

    public Guid CompanyId { get; set; }

    /// <summary>As the devices name it.</summary>
    public required string JobId { get; init; }

    public string Name { get; set; } = "";

    /// <summary>Name, customer and address in small letters, to be searched.</summary>
    public string Words { get; set; } = "";

    public JobState State { get; set; } = JobState.Lead;

    public required long Created { get; init; }

    /// <summary>When its last item came.</summary>
    public required long Changed { get; set; }

    /// <summary>Number of its last item.</summary>
    public long LastNumber { get; set; }

    /// <summary>The last item that the columns below and the revision know.</summary>
    public long IndexedNumber { get; set; }

    /// <summary>Until when a process is working the index out; another may after that.</summary>
    public long IndexedBy { get; set; }

    /// <summary>SHA-256 of the job as it is now; empty before the first index.</summary>
    public string Revision { get; set; } = "";

    /// <summary>The job file as it is now.</summary>
    public byte[] Head { get; set; } = [];

    /// <summary>Why there is no revision, where there is none.</summary>
    public string Fault { get; set; } = "";

    public int Conflicts { get; set; }

    /// <summary>Errors and warnings of the plan.</summary>
    public int Problems { get; set; }

    public int PostsSet { get; set; }

    public int Posts { get; set; }

    /// <summary>Millimetres of fabric hung, and of all fabric.</summary>
    public long FabricHung { get; set; }

    public long Fabric { get; set; }

    public int Punch { get; set; }

    /// <summary>The locate ticket that runs out last: its number, and when, as UTC ticks.</summary>
    public string Ticket { get; set; } = "";

    public long? TicketEnds { get; set; }
}

/// <summary>The numbers are in the database and never change.</summary>
public enum JobState
{
    Lead = 1,
    Quoted = 2,
    Won = 3,
    Building = 4,
    Done = 5,
    Lost = 6,
}

/// <summary>A piece of what the devices share of a job, as it was sent. Never changed.</summary>
public sealed class JobItem : IOfCompany
{
    public Guid CompanyId { get; set; }

    public required string JobId { get; init; }

    /// <summary>From 1 in the order of arrival; no reader sees a number before all lower ones.</summary>
    public required long Number { get; init; }

    public required ItemKind Kind { get; init; }

    /// <summary>SHA-256 of the body, small hexadecimal digits.</summary>
    public required string Hash { get; init; }

    public required byte[] Body { get; init; }

    public required Guid PersonId { get; init; }

    public Guid? DeviceId { get; init; }

    public required long Received { get; init; }
}

/// <summary>The numbers are in the database and never change.</summary>
public enum ItemKind
{
    /// <summary>A text the job began from.</summary>
    Root = 1,

    /// <summary>A change of the job.</summary>
    Change = 2,

    /// <summary>An entry of the log.</summary>
    Entry = 3,
}

/// <summary>A photo or another file of a job, named by the SHA-256 of its bytes.</summary>
public sealed class Attachment : IOfCompany
{
    public Guid CompanyId { get; set; }

    public required string JobId { get; init; }

    public required string Hash { get; init; }

    public required string MediaType { get; init; }

    public required long Length { get; init; }

    public required byte[] Bytes { get; init; }

    public required Guid PersonId { get; init; }

    public required long Received { get; init; }
}

/// <summary>One paper of one job for somebody without an account, until it expires. Of its token only the digest is kept.</summary>
public sealed class ShareLink : IOfCompany
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    public Guid CompanyId { get; set; }

    public required string JobId { get; init; }

    public required string TokenHash { get; init; }

    public required string Paper { get; init; }

    public string Language { get; init; } = "en";

    public required Guid By { get; init; }

    public required long Created { get; init; }

    public required long Expires { get; init; }

    public long? Withdrawn { get; set; }

    public int Opened { get; set; }
}
