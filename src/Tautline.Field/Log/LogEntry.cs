using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Field.Log;

/// <summary>
/// One fact as it was entered in the field: never changed, only superseded by another. Which of the payloads it carries its kind says; an entry of a kind
/// this program does not know is kept as it is.
/// </summary>
public sealed record LogEntry
{
    public const string Work = "work";
    public const string Hours = "hours";
    public const string Note = "note";
    public const string Ticket = "ticket";
    public const string Check = "check";
    public const string Punch = "punch";
    public const string Change = "change";
    public const string Photo = "photo";
    public const string Material = "material";
    public const string Weather = "weather";
    public const string Talk = "talk";

    /// <summary>The kinds this program can read.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [Work, Hours, Note, Ticket, Check, Punch, Change, Photo, Material, Weather, Talk];

    public required string Device { get; init; }

    /// <summary>Number of the entry on its device, from 1.</summary>
    public required long Sequence { get; init; }

    /// <summary>Orders entries of several devices: see <see cref="Stamp"/>.</summary>
    public required long Tick { get; init; }

    /// <summary>The device's clock when it was entered, milliseconds since 1970. Shown to people; nothing is decided by it.</summary>
    public required long At { get; init; }

    public string Person { get; init => field = value ?? ""; } = "";

    public required string Kind { get; init; }

    /// <summary>The entry this one takes the place of.</summary>
    public LogKey? Supersedes { get; init; }

    /// <summary>True where it only takes the other back and says nothing in its place.</summary>
    public bool TakesBack { get; init; }

    /// <summary>What it is about, in free words.</summary>
    public string Text { get; init => field = value ?? ""; } = "";

    /// <summary>Where along the fence; nothing where it is about the whole job.</summary>
    public LogPlace? Place { get; init; }

    /// <summary>Of kind <see cref="Work"/>.</summary>
    public WorkDone? Done { get; init; }

    /// <summary>Of kind <see cref="Hours"/>: hours of the person, on an operation where one is named.</summary>
    public HoursWorked? Worked { get; init; }

    /// <summary>Of kind <see cref="Ticket"/>.</summary>
    public LocateTicket? Locate { get; init; }

    /// <summary>Of kind <see cref="Check"/>.</summary>
    public Checked? Found { get; init; }

    /// <summary>Of kind <see cref="Punch"/>: true once it is done. Of entries without <see cref="Punched"/>.</summary>
    public bool? Mended { get; init; }

    /// <summary>Of kind <see cref="Change"/>; what it is for stands in <see cref="Text"/>.</summary>
    public ChangeOrder? Changed { get; init; }

    /// <summary>Of kind <see cref="Material"/>.</summary>
    public MaterialUsed? Used { get; init; }

    /// <summary>Of kind <see cref="Weather"/>.</summary>
    public WeatherSeen? Seen { get; init; }

    /// <summary>Of kind <see cref="Talk"/>.</summary>
    public TalkHeld? Held { get; init; }

    /// <summary>Photos that belong to it, of any kind; what they show stands in <see cref="Text"/>.</summary>
    public IReadOnlyList<PhotoRef>? Photos { get; init; }

    /// <summary>Of kind <see cref="Punch"/>: an item is opened, or moved on.</summary>
    public PunchItem? Punched { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }

    [JsonIgnore]
    public LogKey Key => new(Device, Sequence);
}

/// <summary>A place on a leg, measured level from its start.</summary>
public sealed record LogPlace
{
    public required LegId Leg { get; init; }

    public required Length At { get; init; }

    /// <summary>What the place was called when the entry was made, so that it still says something once the leg is gone.</summary>
    public string Called { get; init => field = value ?? ""; } = "";

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Work that was done: so many of a run, or the posts themselves where it matters which.</summary>
public sealed record WorkDone
{
    /// <summary>One of <see cref="Operations"/>; others are kept and counted under their own name.</summary>
    public required string Operation { get; init; }

    public required int Count { get; init; }

    /// <summary>The posts it is about, each where it was then or where it was measured to stand.</summary>
    public IReadOnlyList<PostDone> Posts { get; init => field = value ?? []; } = [];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A post that was worked on, with coordinates of its own: the line may be moved afterwards, the post is not.</summary>
public sealed record PostDone
{
    public required LegId Leg { get; init; }

    /// <summary>Level distance from the start of the leg as the leg was then.</summary>
    public required Length At { get; init; }

    public required Length East { get; init; }

    public required Length North { get; init; }

    /// <summary>Top of the fabric it is set for over the job's datum.</summary>
    public Length? Top { get; init; }

    /// <summary>Of the post in its line when the entry was made, for people.</summary>
    public int Number { get; init; }

    /// <summary>True for a line post; a terminal's place is the line's own.</summary>
    public bool Line { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

public sealed record HoursWorked
{
    public required double Hours { get; init; }

    public string? Operation { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A utility locate request as it was answered.</summary>
public sealed record LocateTicket
{
    public required string Number { get; init; }

    /// <summary>First day digging is allowed, milliseconds since 1970 at the start of that day where the work is.</summary>
    public required long From { get; init; }

    /// <summary>End of the last day.</summary>
    public required long To { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>What an inspection found, or that somebody signs for a stage.</summary>
public sealed record Checked
{
    /// <summary>In place of a check's key where a stage is signed off.</summary>
    public const string SignOff = "signoff";

    /// <summary>Key of the check, as <see cref="Inspecting.InspectionList"/> has it; others are kept and shown under their own name.</summary>
    public required string Item { get; init; }

    /// <summary>In metres, degrees or days, as the check is measured; nothing where it was looked at and not measured.</summary>
    public double? Measured { get; init; }

    public required bool Passed { get; init; }

    /// <summary>Whether a whole run was looked at, one post or a gate; nothing in entries of older programs.</summary>
    public string? Of { get; init; }

    /// <summary>The tolerance it was judged by, in the unit of <see cref="Measured"/>, so that it still says something once the rules are others.</summary>
    public double? Least { get; init; }

    public double? Most { get; init; }

    /// <summary>The stage that is signed for.</summary>
    public string? Stage { get; init; }

    /// <summary>Who signs.</summary>
    public string? By { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A punch item: opened by the first entry about it, moved on by later ones that name that one.</summary>
public sealed record PunchItem
{
    public const string Open = "open";
    public const string Mended = "mended";
    public const string Accepted = "accepted";

    /// <summary>The entry that opened it: an own item, or a failed check; nothing where this entry opens it.</summary>
    public LogKey? Of { get; init; }

    /// <summary>One of <see cref="Open"/>, <see cref="Mended"/>, <see cref="Accepted"/>; any other counts as open.</summary>
    public required string State { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}
