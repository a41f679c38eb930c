using System.Text;
using Tautline.Desk;
using Tautline.Engine.Comparison;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.FieldScreens;

/// <summary>
/// The log of the job on the desk: what is entered, what stands, what is next. An entry counts as kept when the browser has it on disk, not before; one that could
/// not be kept stays in the field it was written into. It names types that are fetched late: get it from <see cref="FieldGate"/>.
/// </summary>
public sealed partial class FieldDesk
{
    private readonly Session session;
    private readonly Shelf shelf;
    private readonly BrowserPage browser;
    private readonly BrowserFiles files;
    private readonly TimeProvider clock;
    private readonly Action changed;
    private readonly PhotoShelf photos;
    private readonly CarryScript carry;
    private readonly List<LogEntry> entries = [];
    private readonly string job;
    private Plan? drawn;
    private Plan? seen;
    private BuiltRecord? record;
    private LogState? recorded;

    private FieldDesk(Session session, Shelf shelf, BrowserPage browser, BrowserFiles files, PhotoShelf photos, CarryScript carry, TimeProvider clock, Action changed)
        => (this.session, this.shelf, this.browser, this.files, this.photos, this.carry, this.clock, this.changed, job) = (session, shelf, browser, files, photos, carry, clock, changed, session.Job.Id.Value);

    /// <summary>Who enters; kept in this browser.</summary>
    public string Person { get; private set; } = "";

    /// <summary>Who wrote in this log before.</summary>
    public IReadOnlyList<string> People => [.. entries.Select(e => e.Person).Where(p => p.Length > 0).Distinct().Order(StringComparer.Ordinal)];

    public LogState Log { get; private set; } = LogState.Of([]);

    public Today Today { get; private set; } = new([], []);

    public Standing Standing { get; private set; } = new(BuiltFacts.None, []);

    public DigWatch Dig => DigWatch.Of(Log, clock.GetUtcNow().ToUnixTimeMilliseconds());

    /// <summary>Entries on disk.</summary>
    public int Kept => entries.Count;

    public bool Busy { get; private set; }

    /// <summary>Why the last entry was not kept; empty where it was.</summary>
    public string Trouble { get; private set; } = "";

    public bool TroubleIsRoom { get; private set; }

    /// <summary>Entries that could not be read; they stay on the shelf.</summary>
    public int Unread { get; private set; }

    public static async Task<object> OpenAsync(Session session, Shelf shelf, BrowserPage browser, BrowserFiles files, PhotoShelf photos, CarryScript carry, TimeProvider clock, Action changed)
    {
        FieldDesk desk = new(session, shelf, browser, files, photos, carry, clock, changed);
        desk.Person = await browser.ChoiceAsync("person");
        desk.Take(await shelf.EntriesAsync(desk.job));
        desk.PhotosHere = await photos.KeptAsync(desk.job);
        desk.HandedOver = await desk.HandedOverAsync();
        if (Known(await shelf.SharedAsync(desk.job)) is { } shared) (desk.Conflicts, desk.EditsTwice) = (shared.Conflicts, shared.NumbersTwice);
        await session.BuildAsync(desk.Built);
        session.Changed += desk.Follow;
        desk.Follow();
        _ = desk.BeginCarryingAsync();
        return desk;
    }

    public async Task NameAsync(string person)
    {
        Person = person.Trim();
        await browser.ChooseAsync("person", Person);
        changed();
    }

    /// <summary>The next so many posts of a run, or the run or gate as a whole.</summary>
    public Task<bool> MarkAsync(TodayRow row, int count)
    {
        if (Operations.OfPosts(row.Operation)) return AddAsync(e => e with { Kind = LogEntry.Work, Done = Marking.Next(session.Plan, row, Math.Clamp(count, 1, row.Left.Count)) });
        (WorkDone done, LogPlace place) = Marking.Whole(session.Plan, row);
        return AddAsync(e => e with { Kind = LogEntry.Work, Done = done, Place = place });
    }

    /// <summary>A post that was set somewhere else along its line.</summary>
    /// <param name="fromRunStart">Tape, level, from the first post of the run.</param>
    /// <returns>What is wrong with it; empty where it was taken.</returns>
    public async Task<string> SetElsewhereAsync(int line, int run, int post, string fromRunStart)
    {
        Parsed<Length> read = LengthText.Parse(fromRunStart, session.Job.Units == UnitSystem.Metric ? LengthUnit.Metre : LengthUnit.Foot);
        if (!read.Ok) return $"{read.Problem.Message} {read.Problem.Hint}";
        RunPlan along = session.Plan.Lines[line].Runs[run];
        if (read.Value <= Length.Zero || read.Value >= along.Level) return LengthText.Show(along.Level, session.Job.Units);
        Length station = session.Plan.Lines[line].Posts[along.FromPost].Station + read.Value;
        return await AddAsync(e => e with
        {
            Kind = LogEntry.Work,
            Done = new() { Operation = Operations.Set, Count = 1, Posts = [Marking.At(session.Plan, line, post, station)] },
        }) ? "" : Trouble;
    }

    public Task<bool> NoteAsync(string text) => AddAsync(e => e with { Kind = LogEntry.Note, Text = text.Trim() });

    public Task<bool> HoursAsync(double hours, string operation) => AddAsync(e => e with { Kind = LogEntry.Hours, Worked = new() { Hours = hours, Operation = operation.Length > 0 ? operation : null } });

    /// <summary>Work over and above the job, agreed and signed.</summary>
    /// <param name="station">Level, from the start of the line.</param>
    public Task<bool> ChangeAsync(ChangeOrder order, string words, int line, Length station, IReadOnlyList<PhotoRef> with) => AddAsync(e => e with
    {
        Kind = LogEntry.Change,
        Text = words.Trim(),
        Place = Marking.PlaceAt(session.Plan, line, station),
        Changed = order,
        Photos = with.Count > 0 ? with : null,
    });

    /// <summary>Days as they are written on the ticket, in the device's time; the last one counts whole.</summary>
    public Task<bool> TicketAsync(string number, DateOnly from, DateOnly to) => AddAsync(e => e with
    {
        Kind = LogEntry.Ticket,
        Locate = new() { Number = number.Trim(), From = Start(from), To = Start(to.AddDays(1)) },
    });

    /// <summary>An entry was wrong: another says so. The first one stays in the log.</summary>
    public Task<bool> TakeBackAsync(LogEntry entry) => AddAsync(e => e with { Kind = entry.Kind, Supersedes = entry.Key, TakesBack = true });

    /// <summary>By how much what stands changed the take-off.</summary>
    public IReadOnlyList<TakeoffDifference> Changes => drawn is null || ReferenceEquals(drawn, session.Plan) ? [] : RuleComparison.ComparePlans(drawn, session.Plan).Takeoff;

    /// <summary>What stands beside what was drawn; worked out when it is asked for, for it takes a while on a long fence.</summary>
    public BuiltRecord Record
    {
        get
        {
            if (record is null || !ReferenceEquals(record.Now, session.Plan) || !ReferenceEquals(recorded, Log)) (record, recorded) = (BuiltRecord.Of(drawn ?? session.Plan, session.Plan, Log), Log);
            return record;
        }
    }

    private static long Start(DateOnly day) => new DateTimeOffset(day.ToDateTime(default, DateTimeKind.Local)).ToUnixTimeMilliseconds();

    private async Task<bool> AddAsync(Func<LogEntry, LogEntry> write)
    {
        if (Busy) return false;
        (Busy, Trouble) = (true, "");
        changed();
        try
        {
            (string device, long sequence) = await shelf.NextNumberAsync();
            long now = clock.GetUtcNow().ToUnixTimeMilliseconds();
            LogEntry entry = write(new() { Device = device, Sequence = sequence, Tick = Stamp.Next(now, Log.Seen), At = now, Person = Person, Kind = LogEntry.Note });
            await shelf.AddEntryAsync(job, device, sequence, LogJson.Write(entry));
            entries.Add(entry);
            Device = device;
            Log = LogState.Of(entries);
            await session.BuildAsync(Built);
            Later();
            return true;
        }
        catch (ShelfException fault)
        {
            (Trouble, TroubleIsRoom) = (fault.Message, fault.Full);
            return false;
        }
        finally
        {
            Busy = false;
            changed();
        }
    }

    private void Take(byte[] lines)
    {
        foreach (string line in Encoding.UTF8.GetString(lines).Split('\n', StringSplitOptions.RemoveEmptyEntries))
            if (LogJson.Read(Encoding.UTF8.GetBytes(line), out _) is { } entry) entries.Add(entry);
            else Unread++;
        Log = LogState.Of(entries);
    }

    private BuiltFacts Built(Plan plan)
    {
        drawn = plan;
        Standing = Standing.Of(plan, Log);
        return Standing.Facts;
    }

    /// <summary>What is next is read off the plan on the desk.</summary>
    private void Follow()
    {
        if (!session.HasJob || session.Job.Id.Value != job)
        {
            session.Changed -= Follow;
            return;
        }
        if (session.Planning || ReferenceEquals(seen, session.Plan)) return;
        seen = session.Plan;
        Today = Today.Of(session.Plan, Log);
        changed();
    }
}
