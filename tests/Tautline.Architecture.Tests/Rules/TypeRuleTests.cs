using Tautline.Architecture.Tests.Reading;

namespace Tautline.Architecture.Tests.Rules;

public sealed class TypeRuleTests
{
    [Fact]
    public void ClassesAreSealedStaticOrAbstract() => Rule.Holds(
        "A class or record nobody has prepared for inheritance is sealed",
        ProjectFile.All().Where(p => p.IsSource).SelectMany(OpenClasses));

    [Fact]
    public void TheEngineHasNoStaticThatChanges() => Rule.Holds(
        "The Engine keeps nothing between two calls: static fields are readonly or const, static properties have no setter",
        EngineTypes().SelectMany(t => t.ChangingStatics.Select(s => $"{t.FullName}.{s}")));

    [Fact]
    public void TheEngineShowsNoStaticCollectionThatCanBeChanged() => Rule.Holds(
        "A readonly array or list can still be written into: use ImmutableArray, FrozenDictionary, ReadOnlySpan or an IReadOnly... interface",
        EngineTypes().SelectMany(t => t.ExposedCollections.Select(s => $"{t.FullName}.{s}")));

    [Fact]
    public void OpenClassesAreSeen()
    {
        var open = OwnTypes().Where(t => t.IsOpenClass).Select(t => t.FullName.Split('+')[^1]);
        Assert.Equal(["OpenClass", "OpenRecord", "Within"], open.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void ChangingStaticsAreSeen() =>
        Assert.Equal(["Counter", "Hidden", "Setting"], Of(nameof(Specimens.Changing)).ChangingStatics.Order(StringComparer.Ordinal));

    [Fact]
    public void StaticCollectionsInViewAreSeen() =>
        Assert.Equal(["Grid", "Lookup", "Numbers"], Of(nameof(Specimens.Exposing)).ExposedCollections.Order(StringComparer.Ordinal));

    private static IEnumerable<CompiledType> EngineTypes() =>
        CompiledAssembly.OfProject(ProjectFile.All().Single(p => p.Name == Layers.Engine)).Types;

    private static IEnumerable<CompiledType> OwnTypes() =>
        CompiledAssembly.Read(typeof(TypeRuleTests).Assembly.Location).Types.Where(t => t.FullName.Contains(nameof(Specimens), StringComparison.Ordinal));

    private static CompiledType Of(string specimen) => OwnTypes().Single(t => t.FullName.EndsWith($"+{specimen}", StringComparison.Ordinal));

    private static IEnumerable<string> OpenClasses(ProjectFile project)
    {
        // What the Razor compiler makes of Name.razor cannot be sealed from within the file.
        var components = Repository.Files($"{Path.GetDirectoryName(project.Path)}/", ".razor").Select(Path.GetFileNameWithoutExtension).ToHashSet();
        return CompiledAssembly.OfProject(project).Types
            .Where(t => t.IsOpenClass && !components.Contains(t.FullName.Split('.')[^1].Split('`')[0]))
            .Select(t => t.FullName);
    }
}
