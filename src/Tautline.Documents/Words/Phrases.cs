using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Tautline.Documents.Words;

/// <summary>
/// The texts of screens and papers in one language, by key. A text may hold places in braces, {name}, that are filled when it is said. Both
/// languages have the same keys with the same places: a test holds that.
/// </summary>
public sealed class Phrases
{
    public const string English = "en";
    public const string Spanish = "es";

    private readonly Dictionary<string, string> texts;

    private Phrases(string language)
    {
        using Stream file = language == Spanish ? OpenSpanish() : typeof(Phrases).Assembly.GetManifestResourceStream("words.en.json")!;
        using JsonDocument read = JsonDocument.Parse(file);
        texts = read.RootElement.EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetString()!, StringComparer.Ordinal);
        Language = language;
    }

    /// <summary>The languages there are, the first where none was chosen.</summary>
    public static IReadOnlyList<string> Languages { get; } = [English, Spanish];

    /// <summary>As in the 'lang' attribute of a page.</summary>
    public string Language { get; }

    public IEnumerable<string> Keys => texts.Keys;

    /// <summary>The texts of a language; English where it is none of ours.</summary>
    public static Phrases Of(string? language) => new(Languages.FirstOrDefault(l => language?.StartsWith(l, StringComparison.OrdinalIgnoreCase) == true) ?? English);

    // In a method of its own: in a page the assembly comes late, and a method that names it cannot begin before.
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
    private static Stream OpenSpanish() => Tautline.Spanish.SpanishWords.Open();

    /// <summary>A text as it stands.</summary>
    /// <exception cref="KeyNotFoundException">There is no such text: a slip of ours.</exception>
    public string this[string key] => texts.TryGetValue(key, out string? text) ? text : throw new KeyNotFoundException($"There are no words for '{key}'.");

    /// <summary>A text, or another where there is none: for what names itself, such as the parts of a catalogue.</summary>
    public string Or(string key, string otherwise) => texts.GetValueOrDefault(key, otherwise);

    /// <summary>A text with its places filled.</summary>
    public string Say(string key, params ReadOnlySpan<(string Place, object Value)> with)
    {
        var said = new StringBuilder(this[key]);
        foreach ((string place, object value) in with) said.Replace("{" + place + "}", Convert.ToString(value, CultureInfo.InvariantCulture));
        return said.ToString();
    }

    /// <summary>'1 post', '2 posts': of two texts the one for this number, which stands at its place {n}.</summary>
    public string Count(string key, int number) => Say(number == 1 ? key + ".one" : key + ".other", ("n", number.ToString("#,0", CultureInfo.InvariantCulture)));
}
