using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using CsCheck;
using Json.Schema;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Cli.Tests;

public sealed class SchemaTests
{
    private static readonly string text = new CliFolder().Run("schema").Output;

    private static readonly JsonSchema schema = JsonSchema.FromText(text);

    private static readonly (string Definition, Type Type)[] records =
    [
        ("", typeof(Job)), ("ruleOverride", typeof(RuleOverride)), ("coordinateFrame", typeof(CoordinateFrame)), ("spec", typeof(Spec)),
        ("line", typeof(Line)), ("vertex", typeof(Vertex)), ("leg", typeof(Leg)), ("gate", typeof(Gate)), ("obstacle", typeof(Obstacle)),
        ("rollCalibration", typeof(RollCalibration)), ("barb", typeof(Barb)), ("tieIn", typeof(TieIn)), ("legCurve", typeof(LegCurve)),
        ("slats", typeof(Slats)), ("screen", typeof(Screen)), ("concertina", typeof(Concertina)), ("pin", typeof(Pin)),
        ("siteWork", typeof(SiteWork)), ("temporaryFence", typeof(TemporaryFence)), ("lineGround", typeof(LineGround)), ("groundShot", typeof(GroundShot)),
        ("lineFit", typeof(LineFit)), ("groundSnapshot", typeof(GroundSnapshot)), ("groundSource", typeof(GroundSource)), ("groundGrid", typeof(GroundGrid)),
        ("groundGridPart", typeof(GroundGridPart)), ("rollStock", typeof(RollStock)), ("hangNote", typeof(HangNote)), ("rollReport", typeof(RollReport)),
    ];

    [Fact]
    public void EveryFieldOfAJobIsDescribedAndNoOther()
    {
        using var json = JsonDocument.Parse(text);
        Assert.Equal(records.Length - 1, json.RootElement.GetProperty("$defs").EnumerateObject().Count());
        foreach (var (name, type) in records)
        {
            var described = Definition(json, name).GetProperty("properties").EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal);
            var held = type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Where(p => p.GetCustomAttribute<JsonExtensionDataAttribute>() is null && p.GetCustomAttribute<JsonIgnoreAttribute>() is null)
                .Select(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name)).Order(StringComparer.Ordinal);
            Assert.Equal(held, described);
        }
    }

    [Fact]
    public void EveryFieldHasADescriptionAndEveryNumberItsUnit()
    {
        using var json = JsonDocument.Parse(text);
        foreach (var (name, _) in records)
            foreach (var field in Definition(json, name).GetProperty("properties").EnumerateObject().Where(f => !f.Value.TryGetProperty("$ref", out _)))
            {
                var words = field.Value.GetProperty("description").GetString()!;
                if (field.Value.TryGetProperty("type", out var type) && type.GetString() == "number")
                    Assert.Matches("metres|ratio|kilograms", words);
            }
    }

    [Theory]
    [InlineData(Jobs.Line100)]
    [InlineData(Jobs.Yard)]
    public void HandTypedJobsFit(string job) => Assert.True(Fits(job), job);

    [Fact]
    public void SampleJobsFit()
    {
        var jobs = Directory.EnumerateFiles(Samples.Folder, "*.json", SearchOption.AllDirectories).Where(IsJob).ToList();
        Assert.NotEmpty(jobs);
        Assert.All(jobs, f => Assert.True(Fits(File.ReadAllText(f)), f));
    }

    [Fact]
    public void AnyJobThatIsWrittenFits() => GenAnyJob.Any.Always(job => Fits(Encoding.UTF8.GetString(JobFile.Write(job))), iter: 300);

    [Theory]
    [InlineData("\"height\": 1.8288", "\"height\": \"6 ft\"")]
    [InlineData("\"height\": 1.8288", "\"height\": -1")]
    [InlineData("\"id\": \"ab\"", "\"id\": \"\"")]
    [InlineData("\"brace\": \"no\"", "\"brace\": \"maybe\"")]
    [InlineData("\"id\": \"ab\"", "\"id\": \"ab\", \"grade\": 12")]
    [InlineData("\"order\": \"2\"", "\"order\": \"20\"")]
    [InlineData("\"format\": \"tautline-job\"", "\"format\": \"other\"")]
    [InlineData("\"version\": 1", "\"version\": 1, \"units\": \"furlongs\"")]
    public void AWrongValueDoesNotFit(string found, string instead) => Assert.False(Fits(Jobs.With(found, instead)));

    [Fact]
    public void UnknownFieldsFit() => Assert.True(Fits(Jobs.With("\"version\": 1", "\"version\": 1, \"weather\": { \"rain\": true }")));

    /// <summary>A field file holds a job and is none.</summary>
    private static bool IsJob(string path)
    {
        using var json = JsonDocument.Parse(File.ReadAllBytes(path));
        return json.RootElement.TryGetProperty("format", out var format) && format.GetString() == "tautline-job";
    }

    private static bool Fits(string job)
    {
        using var json = JsonDocument.Parse(job);
        return schema.Evaluate(json.RootElement).IsValid;
    }

    private static JsonElement Definition(JsonDocument json, string name)
        => name.Length == 0 ? json.RootElement : json.RootElement.GetProperty("$defs").GetProperty(name);
}
