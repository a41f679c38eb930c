using System.Text.Json;
using Tautline.Cli.Output;
using Tautline.Engine.Plans;
using Tautline.Engine.Takeoff;

namespace Tautline.Cli.Plan;

/// <summary>Net quantities place by place as JSON: counts, metres, square and cubic metres. The plan's own file has none of it.</summary>
internal static class QuantitiesJson
{
    public static string Write(Engine.Plans.Plan plan, QuantitiesBy by) => JsonText.Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("job", plan.Job.Value);
        json.WriteString("planHash", PlanFile.Hash(plan));
        json.WriteStartArray("quantities");
        foreach (var row in Places.Rows(plan, by)) Row(json, plan, row);
        json.WriteEndArray();
        json.WriteEndObject();
    });

    private static void Row(Utf8JsonWriter json, Engine.Plans.Plan plan, PlaceQuantity row)
    {
        var item = Places.Item(plan, row);
        json.WriteStartObject();
        json.WriteString("place", Places.Kind(row.Place));
        if (Places.Line(plan, row.Place) is { } line) json.WriteString("line", line.Value);
        if (Places.Run(plan, row.Place) is { } run) json.WriteNumber("run", run);
        if (Places.Temporary(plan, row.Place) is { } temporary) json.WriteString("temporary", temporary.Value);
        json.WriteNumber("number", item.Number);
        json.WriteString("part", item.Part);
        json.WriteNumber("net", item.Net);
        json.WriteString("netUnit", item.NetUnit.ToString().ToLowerInvariant());
        json.WriteEndObject();
    }
}
