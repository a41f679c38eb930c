using System.Data.Common;
using System.Text.Json;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Tautline.Store.Backups;

/// <summary>A value of a column as JSON, the same from both databases.</summary>
internal static class ColumnValue
{
    /// <summary>The type a column is read as.</summary>
    public static Type TypeOf(IColumn column)
    {
        var property = column.PropertyMappings[0].Property;
        var type = property.GetTypeMapping().Converter?.ProviderClrType ?? property.ClrType;
        type = Nullable.GetUnderlyingType(type) ?? type;
        return type.IsEnum ? Enum.GetUnderlyingType(type) : type;
    }

    public static void Write(Utf8JsonWriter writer, DbDataReader reader, int i, Type type)
    {
        if (type == typeof(long)) writer.WriteNumberValue(reader.GetInt64(i));
        else if (type == typeof(int)) writer.WriteNumberValue(reader.GetInt32(i));
        else if (type == typeof(bool)) writer.WriteBooleanValue(reader.GetBoolean(i));
        else if (type == typeof(Guid)) writer.WriteStringValue(reader.GetGuid(i));
        else if (type == typeof(byte[])) writer.WriteBase64StringValue(reader.GetFieldValue<byte[]>(i));
        else if (type == typeof(DateTimeOffset)) writer.WriteStringValue(reader.GetFieldValue<DateTimeOffset>(i));
        else if (type == typeof(string)) writer.WriteStringValue(reader.GetString(i));
        else throw new NotSupportedException($"a backup has no way to write {type}");
    }

    public static object Read(JsonElement value, Type type)
        => type == typeof(long) ? value.GetInt64()
            : type == typeof(int) ? value.GetInt32()
            : type == typeof(bool) ? value.GetBoolean()
            : type == typeof(Guid) ? value.GetGuid()
            : type == typeof(byte[]) ? value.GetBytesFromBase64()
            : type == typeof(DateTimeOffset) ? value.GetDateTimeOffset().ToUniversalTime()
            : value.GetString()!;
}
