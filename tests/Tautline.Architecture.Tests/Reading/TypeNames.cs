using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace Tautline.Architecture.Tests.Reading;

/// <summary>Types in signatures as names; of a generic type only the open name, which is all the rules ask for.</summary>
internal sealed class TypeNames : ISignatureTypeProvider<string, object?>
{
    public static TypeNames Decoder { get; } = new();

    /// <summary>Types that are the same object for everyone who can see them and can be filled or emptied by anyone.</summary>
    public static bool CanChangeInside(string type) => type.EndsWith("[]", StringComparison.Ordinal) || type
        is "System.Collections.Generic.List`1" or "System.Collections.Generic.Dictionary`2"
        or "System.Collections.Generic.HashSet`1" or "System.Collections.Generic.Queue`1"
        or "System.Collections.Generic.SortedDictionary`2" or "System.Collections.Generic.SortedSet`1"
        or "System.Collections.Generic.IList`1" or "System.Collections.Generic.IDictionary`2"
        or "System.Text.StringBuilder";

    public static string Of(MetadataReader rows, EntityHandle handle) => handle.Kind switch
    {
        HandleKind.TypeDefinition => Named(rows, rows.GetTypeDefinition((TypeDefinitionHandle)handle).Namespace, rows.GetTypeDefinition((TypeDefinitionHandle)handle).Name),
        HandleKind.TypeReference => Named(rows, rows.GetTypeReference((TypeReferenceHandle)handle).Namespace, rows.GetTypeReference((TypeReferenceHandle)handle).Name),
        HandleKind.TypeSpecification => rows.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(Decoder, null),
        _ => "",
    };

    public static string OfConstructor(MetadataReader rows, EntityHandle constructor) => constructor.Kind switch
    {
        HandleKind.MemberReference => Of(rows, rows.GetMemberReference((MemberReferenceHandle)constructor).Parent),
        HandleKind.MethodDefinition => Of(rows, rows.GetMethodDefinition((MethodDefinitionHandle)constructor).GetDeclaringType()),
        _ => "",
    };

    public string GetArrayType(string elementType, ArrayShape shape) => elementType + "[]";

    public string GetSZArrayType(string elementType) => elementType + "[]";

    public string GetGenericInstantiation(string genericType, ImmutableArray<string> typeArguments) => genericType;

    public string GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) => Of(reader, handle);

    public string GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => Of(reader, handle);

    public string GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) => Of(reader, handle);

    public string GetPrimitiveType(PrimitiveTypeCode typeCode) => typeCode.ToString();

    public string GetByReferenceType(string elementType) => elementType;

    public string GetPointerType(string elementType) => elementType;

    public string GetPinnedType(string elementType) => elementType;

    public string GetModifiedType(string modifier, string unmodifiedType, bool isRequired) => unmodifiedType;

    public string GetFunctionPointerType(MethodSignature<string> signature) => "fnptr";

    public string GetGenericMethodParameter(object? genericContext, int index) => $"!!{index}";

    public string GetGenericTypeParameter(object? genericContext, int index) => $"!{index}";

    private static string Named(MetadataReader rows, StringHandle space, StringHandle name) => $"{rows.GetString(space)}.{rows.GetString(name)}";
}
