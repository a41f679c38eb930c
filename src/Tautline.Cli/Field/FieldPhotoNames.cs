using System.Text;
using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <summary>
/// Names for photos: when, where and what it shows, and eight digits of its content. Only letters, digits and hyphens: every file system takes them, none of them leads out of
/// a folder, and the digits at the end keep two photos of one minute apart.
/// </summary>
internal static class FieldPhotoNames
{
    // Each: with the rest a name stays below 143 signs, the least any file system in use allows.
    private const int MostSigns = 48;
    private const int Digits = 8;

    private static readonly Dictionary<char, string> plain = Plain();

    /// <summary>By digest. Of several entries that name one photo the first that stands tells of it.</summary>
    public static IReadOnlyDictionary<string, string> Of(FieldFile file, FieldClock clock)
    {
        Dictionary<string, LogEntry> told = new(StringComparer.Ordinal);
        foreach (var entry in LogState.Of(file.Exchange.Log).Standing.Concat(file.Exchange.Log))
            foreach (var photo in entry.Photos ?? []) told.TryAdd(photo.Sha256, entry);
        Dictionary<string, string> names = new(StringComparer.Ordinal);
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        foreach (var digest in file.Photos)
        {
            var digits = Digits;
            while (!taken.Add(names[digest] = Name(told.GetValueOrDefault(digest), digest[..digits], clock))) digits++;
        }
        return names;
    }

    private static string Name(LogEntry? entry, string digits, FieldClock clock)
    {
        string[] parts = entry is null ? ["no-entry", digits] : [clock.Stamp(entry.At), entry.Place?.Called ?? "", entry.Text, digits];
        return $"{string.Join('-', parts.Select(Safe).Where(p => p.Length > 0))}.jpg";
    }

    private static string Safe(string words)
    {
        var safe = new StringBuilder();
        foreach (var sign in words)
        {
            if (char.IsAsciiLetterOrDigit(sign)) safe.Append(sign);
            else if (plain.TryGetValue(sign, out var letters)) safe.Append(letters);
            else if (safe.Length > 0 && safe[^1] != '-') safe.Append('-');
            if (safe.Length >= MostSigns) break;
        }
        return safe.ToString().Trim('-');
    }

    /// <summary>Letters with marks by their letters; the runtime without cultures cannot take them apart.</summary>
    private static Dictionary<char, string> Plain()
    {
        Dictionary<char, string> letters = new() { ['ß'] = "ss", ['æ'] = "ae", ['Æ'] = "AE", ['œ'] = "oe", ['Œ'] = "OE" };
        foreach (var (letter, marked) in new[]
        {
            ("a", "áàâäãå"), ("e", "éèêë"), ("i", "íìîï"), ("o", "óòôöõø"), ("u", "úùûü"), ("n", "ñ"), ("c", "ç"), ("y", "ýÿ"),
            ("A", "ÁÀÂÄÃÅ"), ("E", "ÉÈÊË"), ("I", "ÍÌÎÏ"), ("O", "ÓÒÔÖÕØ"), ("U", "ÚÙÛÜ"), ("N", "Ñ"), ("C", "Ç"), ("Y", "Ý"),
        })
            foreach (var sign in marked) letters[sign] = letter;
        return letters;
    }
}
