using Tautline.Field.Log;

namespace Tautline.Field.Building;

public enum DigWord
{
    /// <summary>No locate ticket is on record: do not dig.</summary>
    NoTicket,

    /// <summary>Tickets begin later: do not dig yet.</summary>
    NotYet,

    /// <summary>Every ticket has run out: do not dig.</summary>
    Expired,

    /// <summary>A ticket is in force. Marks are checked on the ground first, and private lines are not in it.</summary>
    InForce,
}

/// <summary>
/// Whether a locate ticket is in force at a moment. It says nothing of the marks on the ground, and one-call services do not mark private lines: state law and the
/// ticket's own words decide, not this.
/// </summary>
public sealed record DigWatch(DigWord Word, LocateTicket? Ticket)
{
    public bool MayDig => Word == DigWord.InForce;

    /// <param name="at">Milliseconds since 1970.</param>
    public static DigWatch Of(LogState log, long at)
    {
        List<LocateTicket> tickets = [.. log.Standing.Select(e => e.Locate).OfType<LocateTicket>()];
        if (tickets.Where(t => t.From <= at && at < t.To).MaxBy(t => t.To) is { } holds) return new(DigWord.InForce, holds);
        if (tickets.Where(t => t.From > at).MinBy(t => t.From) is { } later) return new(DigWord.NotYet, later);
        return tickets.MaxBy(t => t.To) is { } last ? new(DigWord.Expired, last) : new(DigWord.NoTicket, null);
    }
}
