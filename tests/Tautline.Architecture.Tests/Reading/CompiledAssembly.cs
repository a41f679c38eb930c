using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Tautline.Architecture.Tests.Reading;

/// <summary>A built assembly read as a file: its rows of metadata, nothing loaded or run.</summary>
internal sealed record CompiledAssembly(string Name, IReadOnlyList<string> References, IReadOnlyList<CompiledType> Types)
{
    /// <summary>The assembly of a project under src/, in the configuration these tests were built in.</summary>
    public static CompiledAssembly OfProject(ProjectFile project)
    {
        var folder = Repository.PathOf($"{Path.GetDirectoryName(project.Path)}/bin/{Repository.Configuration}");
        var file = Directory.Exists(folder)
            ? Directory.EnumerateFiles(folder, $"{project.Assembly}.dll", SearchOption.AllDirectories)
                .Where(f => !f.Contains("/ref/", StringComparison.Ordinal) && !f.Contains("/publish/", StringComparison.Ordinal))
                .MaxBy(File.GetLastWriteTimeUtc)
            : null;
        Assert.True(file is not null, $"{project.Assembly}.dll is not built ({Repository.Configuration}); build the solution first");
        return Read(file);
    }

    public static CompiledAssembly Read(string file)
    {
        using var stream = File.OpenRead(file);
        using var image = new PEReader(stream);
        var rows = image.GetMetadataReader();
        return new(
            rows.GetString(rows.GetAssemblyDefinition().Name),
            [.. rows.AssemblyReferences.Select(h => rows.GetString(rows.GetAssemblyReference(h).Name))],
            [.. rows.TypeDefinitions.Select(h => CompiledType.Read(rows, h)).OfType<CompiledType>()]);
    }
}

/// <summary>A type as compiled; what the compiler or a generator made up is left out.</summary>
/// <param name="ChangingStatics">Static fields that can be set again, and static properties with a setter.</param>
/// <param name="ExposedCollections">Visible static fields and properties of a type whose content can be changed.</param>
internal sealed record CompiledType(
    string FullName, bool IsOpenClass, IReadOnlyList<string> ChangingStatics, IReadOnlyList<string> ExposedCollections)
{
    private const string MadeByCompiler = "System.Runtime.CompilerServices.CompilerGeneratedAttribute";

    public static CompiledType? Read(MetadataReader rows, TypeDefinitionHandle handle)
    {
        var type = rows.GetTypeDefinition(handle);
        var name = FullNameOf(rows, type);
        if (IsMadeUp(rows, type) || name == "<Module>")
            return null;
        return new(name, IsOpen(rows, type), [.. StaticsThatChange(rows, type)], [.. CollectionsInView(rows, type)]);
    }

    private static string FullNameOf(MetadataReader rows, TypeDefinition type)
    {
        var name = rows.GetString(type.Name);
        if (!type.GetDeclaringType().IsNil)
            return $"{FullNameOf(rows, rows.GetTypeDefinition(type.GetDeclaringType()))}+{name}";
        var space = rows.GetString(type.Namespace);
        return space.Length == 0 ? name : $"{space}.{name}";
    }

    private static bool IsMadeUp(MetadataReader rows, TypeDefinition type) =>
        rows.GetString(type.Name).Contains('<', StringComparison.Ordinal)
        || IsMarked(rows, type.GetCustomAttributes(), MadeByCompiler)
        || (!type.GetDeclaringType().IsNil && IsMadeUp(rows, rows.GetTypeDefinition(type.GetDeclaringType())))
        || type.GetMethods().Any(m => rows.GetString(rows.GetMethodDefinition(m).Name) == "<Main>$");

    private static bool IsOpen(MetadataReader rows, TypeDefinition type) =>
        (type.Attributes & (TypeAttributes.Interface | TypeAttributes.Abstract | TypeAttributes.Sealed)) == 0
        && !type.BaseType.IsNil
        && TypeNames.Of(rows, type.BaseType) != "System.ValueType";

    private static IEnumerable<string> StaticsThatChange(MetadataReader rows, TypeDefinition type)
    {
        foreach (var field in type.GetFields().Select(rows.GetFieldDefinition))
            if ((field.Attributes & FieldAttributes.Static) != 0
                && (field.Attributes & (FieldAttributes.InitOnly | FieldAttributes.Literal)) == 0
                && !rows.GetString(field.Name).Contains('<', StringComparison.Ordinal))
                yield return rows.GetString(field.Name);
        foreach (var property in type.GetProperties().Select(rows.GetPropertyDefinition))
            if (property.GetAccessors().Setter is { IsNil: false } setter
                && (rows.GetMethodDefinition(setter).Attributes & MethodAttributes.Static) != 0)
                yield return rows.GetString(property.Name);
    }

    private static IEnumerable<string> CollectionsInView(MetadataReader rows, TypeDefinition type)
    {
        foreach (var field in type.GetFields().Select(rows.GetFieldDefinition))
            if ((field.Attributes & FieldAttributes.Static) != 0
                && (field.Attributes & FieldAttributes.FieldAccessMask) != FieldAttributes.Private
                && TypeNames.CanChangeInside(field.DecodeSignature(TypeNames.Decoder, null)))
                yield return rows.GetString(field.Name);
        foreach (var property in type.GetProperties().Select(rows.GetPropertyDefinition))
            if (property.GetAccessors().Getter is { IsNil: false } getter
                && rows.GetMethodDefinition(getter) is var method
                && (method.Attributes & MethodAttributes.Static) != 0
                && (method.Attributes & MethodAttributes.MemberAccessMask) != MethodAttributes.Private
                && TypeNames.CanChangeInside(method.DecodeSignature(TypeNames.Decoder, null).ReturnType))
                yield return rows.GetString(property.Name);
    }

    private static bool IsMarked(MetadataReader rows, CustomAttributeHandleCollection attributes, string attribute) =>
        attributes.Select(rows.GetCustomAttribute).Any(a => TypeNames.OfConstructor(rows, a.Constructor) == attribute);
}
