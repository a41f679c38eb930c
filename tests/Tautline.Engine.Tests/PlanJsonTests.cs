using System.Collections;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Plans;

namespace Tautline.Engine.Tests;

public sealed class PlanJsonTests
{
    private static readonly JsonNamingPolicy naming = JsonNamingPolicy.CamelCase;

    public static TheoryData<string> Samples => SampleTests.Names;

    [Theory]
    [MemberData(nameof(Samples))]
    public void EveryChoiceOfAPlanIsAWord(string sample)
    {
        var plan = Some.Plan(SampleTests.Read(sample));
        using var json = JsonDocument.Parse(PlanFile.Canonical(plan));
        Assert.True(Walk(plan, json.RootElement, "plan") > 10, "hardly anything was compared");
    }

    [Fact]
    public void ALengthInNanometresIsWrittenInMetres()
    {
        var rolls = Some.Plan(Some.StraightHundred()).Rolls!;
        using var json = JsonDocument.Parse(PlanFile.Canonical(Some.Plan(Some.StraightHundred())));
        var piece = json.RootElement.GetProperty("rolls").GetProperty("feeds")[0].GetProperty("pieces")[0];
        Assert.Equal(["low", "high"], piece.GetProperty("length").EnumerateObject().Select(p => p.Name));
        Assert.Equal(["low", "high"], piece.GetProperty("pickets").EnumerateObject().Select(p => p.Name));
        Assert.Equal(15.24, json.RootElement.GetProperty("rolls").GetProperty("rolls")[0].GetProperty("length").GetDouble());
        Assert.Equal(15_240_000_000, rolls.Rolls[0].LengthNm);
    }

    /// <summary>Goes through a plan and what was written of it side by side; comes back with how many choices were compared.</summary>
    private static int Walk(object value, JsonElement written, string at)
    {
        if (value is Enum)
        {
            Assert.True(written.ValueKind == JsonValueKind.String, $"{at} is written as {written}");
            return 1;
        }
        if (value is string || written.ValueKind is not (JsonValueKind.Object or JsonValueKind.Array)) return 0;
        if (value is IEnumerable list) return list.Cast<object>().Zip(written.EnumerateArray()).Sum(p => Walk(p.First, p.Second, at + "[]"));
        var count = 0;
        foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
            if (property.GetCustomAttribute<JsonIgnoreAttribute>() is null && property.GetIndexParameters().Length == 0
                && written.TryGetProperty(naming.ConvertName(property.Name), out var part) && property.GetValue(value) is { } inner)
                count += Walk(inner, part, $"{at}.{property.Name}");
        return count;
    }
}
