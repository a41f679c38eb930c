using System.Globalization;
using System.Text.Json;
using Tautline.Cli.Output;
using Tautline.Engine.Plans;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

/// <summary>What a field file holds, for machines: metres, cents, milliseconds since 1970; days and times also as text where the work is.</summary>
internal static class FieldShowJson
{
    public static string Write(FieldState state, FieldClock clock, DateOnly day, bool entries) => JsonText.Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("job", state.File.Exchange.Job.Value);
        json.WriteString("name", state.Job?.Name ?? "");
        json.WriteString("revision", state.File.Exchange.Shared.Revision);
        json.WriteString("zone", clock.Zone);
        Counts(json, state);
        Dig(json, state, clock, day);
        Runs(json, state);
        Built(json, state);
        Changes(json, state, clock);
        Hours(json, state);
        Checks(json, state);
        Stages(json, state);
        Conflicts(json, state.File.Exchange.Shared.Conflicts);
        Findings(json, state);
        Devices(json, state, clock);
        if (entries) Entries(json, state, clock);
        json.WriteEndObject();
    });

    private static void Counts(Utf8JsonWriter json, FieldState state)
    {
        var (file, named) = (state.File, state.File.PhotosNamed);
        json.WriteNumber("entries", FieldEntry.Of(file.Exchange.Log, state.Log).Count);
        json.WriteNumber("standing", state.Log.Standing.Count);
        json.WriteNumber("edits", file.Exchange.Shared.Count);
        json.WriteStartObject("photos");
        json.WriteNumber("inFile", file.Photos.Count);
        json.WriteNumber("named", named.Count);
        json.WriteNumber("namedAndNotInFile", named.Except(file.Photos).Count());
        json.WriteEndObject();
    }

    private static void Dig(Utf8JsonWriter json, FieldState state, FieldClock clock, DateOnly day)
    {
        var dig = DigWatch.Of(state.Log, clock.Noon(day));
        json.WriteStartObject("dig");
        json.WriteString("day", day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        json.WriteString("word", Camel(dig.Word.ToString()));
        json.WriteBoolean("ticketInForce", dig.MayDig);
        if (dig.Ticket is { } ticket) json.WriteString("ticket", ticket.Number);
        json.WriteString("caution", "A ticket in force says nothing of the marks on the ground or of private lines. State law and the ticket decide.");
        json.WriteEndObject();
        json.WriteStartArray("tickets");
        foreach (var located in state.Log.Standing.Select(e => e.Locate).OfType<LocateTicket>())
        {
            json.WriteStartObject();
            json.WriteString("number", located.Number);
            json.WriteNumber("from", located.From);
            json.WriteNumber("to", located.To);
            json.WriteString("firstDay", clock.FirstDay(located));
            json.WriteString("lastDay", clock.LastDay(located));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Runs(Utf8JsonWriter json, FieldState state)
    {
        if (state is not { Plan.Now: { } plan, Today: { } today }) return;
        json.WriteStartArray("runs");
        foreach (var run in today.Rows.Where(r => r.Operation != Operations.Gate).GroupBy(r => (r.Line, r.Run)))
        {
            var (line, planned) = (plan.Lines[run.Key.Line], plan.Lines[run.Key.Line].Runs[run.Key.Run]);
            json.WriteStartObject();
            json.WriteString("line", line.Id.Value);
            json.WriteNumber("run", planned.Number);
            json.WriteString("from", PlanWords.Mark(run.Key.Line, line.Posts[planned.FromPost]));
            json.WriteString("to", PlanWords.Mark(run.Key.Line, line.Posts[planned.ToPost]));
            json.WriteStartArray("operations");
            foreach (var row in run) Operation(json, row);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("gates");
        foreach (var row in today.Rows.Where(r => r.Operation == Operations.Gate))
        {
            json.WriteStartObject();
            json.WriteString("gate", plan.Lines[row.Line].Gates[row.Run].Id.Value);
            json.WriteBoolean("hung", row.Finished);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Operation(Utf8JsonWriter json, TodayRow row)
    {
        json.WriteStartObject();
        json.WriteString("operation", row.Operation);
        json.WriteNumber("done", row.Done);
        json.WriteNumber("of", row.Of);
        json.WriteEndObject();
    }

    private static void Built(Utf8JsonWriter json, FieldState state)
    {
        if (state.Built is not { } built) return;
        json.WriteStartObject("built");
        json.WriteString("planHashAsDrawn", PlanFile.Hash(built.Drawn));
        json.WriteString("planHashNow", PlanFile.Hash(built.Now));
        json.WriteBoolean("asDrawn", built.AsDrawn);
        json.WriteNumber("takeoffLinesThatDiffer", built.Takeoff.Count);
        json.WriteStartArray("figures");
        foreach (var figure in built.Progress.Figures)
        {
            json.WriteStartObject();
            json.WriteString("figure", Camel(figure.Kind.ToString()));
            json.WriteString("unit", figure.IsLength ? "m" : "count");
            json.WriteNumber("done", figure.Done);
            json.WriteNumber("of", figure.Of);
            json.WriteNumber("percent", figure.Percent);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("posts");
        foreach (var post in built.Posts) Post(json, built, post);
        json.WriteEndArray();
        Marks(json, built, "leftOut", built.LeftOut);
        Marks(json, built, "toBuild", built.ToBuild);
        json.WriteStartArray("lost");
        foreach (var lost in built.Lost) json.WriteStringValue(lost.Entry.Key.ToString());
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Post(Utf8JsonWriter json, BuiltRecord built, StandingPost post)
    {
        json.WriteStartObject();
        json.WriteString("line", built.Drawn.Lines[post.Line].Id.Value);
        if (post.Drawn is { } drawn) json.WriteString("post", PlanWords.Mark(post.Line, built.Drawn.Lines[post.Line].Posts[drawn]));
        json.WriteNumber("station", post.Station.Metres);
        json.WriteNumber("along", post.Along.Metres);
        json.WriteNumber("off", post.Off.Metres);
        json.WriteBoolean("differs", post.Differs);
        json.WriteBoolean("outOfLine", post.OutOfLine);
        json.WriteBoolean("otherKind", post.OtherKind);
        json.WriteString("entry", post.Entry.Key.ToString());
        json.WriteEndObject();
    }

    private static void Marks(Utf8JsonWriter json, BuiltRecord built, string name, IReadOnlyList<PostAt> posts)
    {
        json.WriteStartArray(name);
        foreach (var post in posts) json.WriteStringValue(PlanWords.Mark(post.Line, built.Drawn.Lines[post.Line].Posts[post.Post]));
        json.WriteEndArray();
    }

    private static void Changes(Utf8JsonWriter json, FieldState state, FieldClock clock)
    {
        json.WriteStartArray("changes");
        foreach (var entry in state.Log.Standing.Where(e => e.Changed is not null))
        {
            json.WriteStartObject();
            json.WriteString("entry", entry.Key.ToString());
            json.WriteString("text", entry.Text);
            json.WriteNumber("quantity", entry.Changed!.Quantity);
            json.WriteString("unit", entry.Changed.Unit);
            json.WriteNumber("unitCents", entry.Changed.UnitCents);
            json.WriteNumber("totalCents", entry.Changed.TotalCents);
            json.WriteString("signer", entry.Changed.Signer);
            json.WriteString("person", entry.Person);
            json.WriteString("time", clock.Iso(entry.At));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Hours(Utf8JsonWriter json, FieldState state)
    {
        json.WriteStartArray("hours");
        foreach (var hours in FieldHours.Of(state.Log))
        {
            json.WriteStartObject();
            json.WriteString("person", hours.Person);
            if (hours.Operation is { } operation) json.WriteString("operation", operation);
            json.WriteNumber("hours", hours.Hours);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Checks(Utf8JsonWriter json, FieldState state)
    {
        json.WriteStartArray("checks");
        foreach (var entry in state.Log.Standing.Where(e => e.Found is { Item: not Checked.SignOff }))
        {
            json.WriteStartObject();
            json.WriteString("entry", entry.Key.ToString());
            json.WriteString("item", entry.Found!.Item);
            if (entry.Found.Measured is { } measured) json.WriteNumber("measured", measured);
            json.WriteBoolean("passed", entry.Found.Passed);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Stages(Utf8JsonWriter json, FieldState state)
    {
        if (state.Inspection is not { } inspection) return;
        json.WriteStartArray("stages");
        foreach (var stage in inspection.Stages)
        {
            json.WriteStartObject();
            json.WriteString("stage", Inspection.Name(stage.Stage));
            json.WriteNumber("passed", stage.Passed);
            json.WriteNumber("failed", stage.Failed);
            json.WriteNumber("open", stage.Open);
            if (stage.Signed?.Found is { } signed) json.WriteString("signedBy", signed.By);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("punch");
        foreach (var item in inspection.Punch)
        {
            json.WriteStartObject();
            json.WriteString("entry", item.Opened.Key.ToString());
            if (item.Item is { } check) json.WriteString("check", check.Key);
            json.WriteString("state", item.State);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Conflicts(Utf8JsonWriter json, IReadOnlyList<Conflict> conflicts)
    {
        json.WriteStartArray("conflicts");
        foreach (var conflict in conflicts)
        {
            json.WriteStartObject();
            json.WriteString("path", conflict.Path);
            Value(json, "base", conflict.Base);
            Value(json, "stands", conflict.Stands);
            json.WriteStartArray("others");
            foreach (var other in conflict.Others) json.WriteStringValue(other);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>A value of the job is its JSON as text; a thing that is there the empty text, one that is not is null.</summary>
    private static void Value(Utf8JsonWriter json, string name, string? value) => json.WriteString(name, value);

    private static void Findings(Utf8JsonWriter json, FieldState state)
    {
        json.WriteStartArray("findings");
        foreach (var finding in state.Log.Findings) Finding(json, Camel(finding.Kind.ToString()), finding.Entry);
        foreach (var key in state.File.Exchange.Shared.NumbersTwice) Finding(json, "editNumberTwice", key);
        foreach (var finding in state.Plan?.Standing.Findings ?? []) Finding(json, Camel(finding.Kind.ToString()), finding.Entry);
        foreach (var entry in (state.Today?.Astray ?? []).Concat(state.Inspection?.Astray ?? [])) Finding(json, "astray", entry.Key);
        json.WriteEndArray();
    }

    private static void Finding(Utf8JsonWriter json, string kind, LogKey entry)
    {
        json.WriteStartObject();
        json.WriteString("kind", kind);
        json.WriteString("entry", entry.ToString());
        json.WriteEndObject();
    }

    private static void Devices(Utf8JsonWriter json, FieldState state, FieldClock clock)
    {
        json.WriteStartArray("devices");
        foreach (var device in FieldDevice.Of(state.File.Exchange))
        {
            json.WriteStartObject();
            json.WriteString("device", device.Name);
            json.WriteStartArray("people");
            foreach (var person in device.People) json.WriteStringValue(person);
            json.WriteEndArray();
            json.WriteNumber("entries", device.Entries);
            json.WriteNumber("edits", device.Edits);
            json.WriteNumber("firstNumber", device.FirstNumber);
            json.WriteNumber("lastNumber", device.LastNumber);
            if (device.Last is { } last) json.WriteString("lastEntry", clock.Iso(last));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>Each as it stands in the file, with what has become of it.</summary>
    private static void Entries(Utf8JsonWriter json, FieldState state, FieldClock clock)
    {
        json.WriteStartArray("log");
        foreach (var entry in FieldEntry.Of(state.File.Exchange.Log, state.Log))
        {
            json.WriteStartObject();
            json.WriteBoolean("stands", entry.Stands);
            json.WriteString("time", clock.Iso(entry.Entry.At));
            json.WritePropertyName("entry");
            json.WriteRawValue(LogJson.Write(entry.Entry));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
