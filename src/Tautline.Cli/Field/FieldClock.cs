using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Tautline.Cli.Terminal;
using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <summary>Times of the log as they were where the work is. The log has moments; which day and hour that is, a time zone says.</summary>
internal sealed class FieldClock(TimeZoneInfo zone)
{
    // Further out no zone has a rule, and no entry an honest clock.
    private static readonly long first = new DateTimeOffset(1900, 1, 1, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();
    private static readonly long last = new DateTimeOffset(9000, 1, 1, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();

    private const long halfDay = 12 * 3_600_000;

    public string Zone => zone.Id;

    /// <summary>'2026-10-12 09:15'; told as it is where it is no time of this world.</summary>
    /// <param name="at">Milliseconds since 1970.</param>
    public string Text(long at) => Written(at, "yyyy-MM-dd HH:mm");

    /// <summary>A ticket is for whole days: half a day in lies the same day, in whichever zone near this one they were written down.</summary>
    public string FirstDay(LocateTicket ticket) => Day(ticket.From, halfDay);

    public string LastDay(LocateTicket ticket) => Day(ticket.To, -halfDay);

    /// <summary>For the name of a file.</summary>
    public string Stamp(long at) => IsTime(at) ? Written(at, "yyyy-MM-dd HHmm") : "undated";

    public DateOnly Today(CliHost host) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(host.Clock.GetUtcNow(), zone).DateTime);

    /// <summary>Noon of a day, milliseconds since 1970: what holds for whole days holds then, in whichever zone near this one they were written down.</summary>
    public long Noon(DateOnly day)
    {
        var noon = day.ToDateTime(new TimeOnly(12, 0));
        return new DateTimeOffset(noon, zone.GetUtcOffset(noon)).ToUnixTimeMilliseconds();
    }

    /// <summary>'2026-10-12T09:15:00-06:00', or nothing.</summary>
    public string? Iso(long at) => IsTime(at) ? Local(at).ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture) : null;

    private string Day(long at, long on) => IsTime(at) ? Written(at + on, "yyyy-MM-dd") : "no date";

    private string Written(long at, string format) => IsTime(at) ? Local(at).ToString(format, CultureInfo.InvariantCulture) : "no date";

    private DateTimeOffset Local(long at) => TimeZoneInfo.ConvertTime(DateTimeOffset.FromUnixTimeMilliseconds(at), zone);

    private static bool IsTime(long at) => at >= first && at <= last;

    public static Option<TimeZoneInfo?> ZoneOption() => new("--zone")
    {
        Description = "The time zone where the work is, such as America/Denver or -06:00; otherwise this machine's.",
        HelpName = "ZONE",
        CustomParser = ReadZone,
    };

    public static Option<DateOnly?> DayOption() => new("--today")
    {
        Description = "The day to judge locate tickets by, such as 2026-10-12; otherwise this machine's.",
        HelpName = "YYYY-MM-DD",
        CustomParser = ReadDay,
    };

    private static TimeZoneInfo? ReadZone(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (Offset(text) is { } offset) return TimeZoneInfo.CreateCustomTimeZone($"UTC{text}", offset, null, null);
        if (TimeZoneInfo.TryFindSystemTimeZoneById(text, out var named)) return named;
        result.AddError($"--zone cannot be '{text}': write a zone this machine knows, such as America/Denver, or hours and minutes from UTC, such as -06:00.");
        return null;
    }

    /// <summary>A zone lies at most 14 hours from UTC.</summary>
    private static TimeSpan? Offset(string text)
        => text.Length == 6 && text[0] is '+' or '-' && TimeSpan.TryParseExact(text[1..], "hh\\:mm", CultureInfo.InvariantCulture, out var hours) && hours <= TimeSpan.FromHours(14)
            ? text[0] == '-' ? -hours : hours
            : null;

    private static DateOnly? ReadDay(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is >= 1900 and < 9000) return day;
        result.AddError($"--today cannot be '{text}': write a day as 2026-10-12.");
        return null;
    }
}
