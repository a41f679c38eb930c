using Microsoft.AspNetCore.Components.WebAssembly.Services;

namespace Tautline.Desk;

/// <summary>Parts of the program that the first visit does without: they are fetched when they are first needed. See the project file for the list.</summary>
public sealed class Late(LazyAssemblyLoader loader)
{
    private static readonly string[] formatsParts =
    [
        "Tautline.Formats.wasm", "ProjNET.wasm", "netstandard.wasm", "System.Numerics.Vectors.wasm", "System.Private.Xml.wasm",
        "System.Collections.NonGeneric.wasm", "System.Net.Http.wasm", "System.Net.Primitives.wasm", "System.IO.Compression.wasm",
    ];

    private static readonly string[] paperParts =
    [
        "Tautline.Papers.wasm", "Tautline.Field.wasm", "PdfSharp.wasm", "PdfSharp.Shared.wasm", "PdfSharp.System.wasm", "System.ComponentModel.Primitives.wasm", "System.IO.Compression.wasm", "QRCoder.wasm",
    ];

    private static readonly string[] tableParts = ["SpreadCheetah.wasm", "System.Drawing.Primitives.wasm", "System.IO.Compression.wasm"];

    private static readonly string[] fieldParts = ["Tautline.Field.wasm", "Tautline.FieldScreens.wasm"];

    private static readonly string[] spanishParts = ["Tautline.Spanish.wasm"];

    private Task? spanish;
    private Task? formats;
    private Task? field;
    private Task? paper;
    private Task? tables;

    /// <summary>The words of a language, before it is spoken.</summary>
    public Task SpeakAsync(string language) => language.StartsWith("es", StringComparison.OrdinalIgnoreCase) ? spanish ??= FetchAsync(spanishParts) : Task.CompletedTask;

    /// <summary>Readers and writers of outside files.</summary>
    public Task FormatsAsync() => formats ??= FetchAsync(formatsParts);

    /// <summary>The writer of PDF files.</summary>
    public Task PaperAsync() => paper ??= FetchAsync(paperParts);

    /// <summary>The writer of spreadsheets.</summary>
    public Task TablesAsync() => tables ??= FetchAsync(tableParts);

    /// <summary>What the field works out and shows: the log, what stands, today.</summary>
    public Task FieldAsync() => field ??= FetchAsync(fieldParts);

    [System.Diagnostics.CodeAnalysis.UnconditionalSuppressMessage("Trimming", "IL2026", Justification = "The parts are references of the page, and trimmed together with it.")]
    private async Task FetchAsync(string[] parts)
    {
        if (Trimmed) await loader.LoadAssembliesAsync(parts);
    }

    // What is not trimmed is fetched whole at the start.
#if DEBUG
    private static bool Trimmed => false;
#else
    private static bool Trimmed => true;
#endif
}
