namespace Tautline.Store.Rows;

/// <summary>What somebody may do; each may all that those below may. The numbers are in the database and never change.</summary>
public enum Role
{
    /// <summary>Reads jobs, writes the log.</summary>
    Crew = 1,

    /// <summary>Also changes jobs.</summary>
    Foreman = 2,

    /// <summary>Also makes jobs, links, imports.</summary>
    Estimator = 3,

    /// <summary>Also people, devices, tokens, audit, the whole export.</summary>
    Owner = 4,
}
