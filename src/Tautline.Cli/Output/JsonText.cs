using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Tautline.Cli.Output;

internal static class JsonText
{
    /// <summary>Indented JSON with line feeds, ending in one.</summary>
    public static string Write(Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(
                   bytes, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            write(json);
        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }
}
