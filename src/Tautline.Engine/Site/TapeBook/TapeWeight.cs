using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Weights, as makers state them: <c>850 lb</c>, <c>385 kg</c>.</summary>
internal static class TapeWeight
{
    /// <summary>Kilograms, or null where the text is no weight above zero with its unit.</summary>
    public static double? Read(string text)
    {
        var figure = text.TrimEnd([.. "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"]);
        if (!double.TryParse(figure.TrimEnd(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)) return null;
        double? kilograms = text[figure.Length..].ToLowerInvariant() switch
        {
            "lb" or "lbs" or "pounds" => Mass.FromPounds(value).Kilograms,
            "kg" => value,
            _ => null,
        };
        return kilograms is > 0 and < 1e6 ? kilograms : null;
    }

    /// <summary>Pounds where they read back to the same weight, else kilograms.</summary>
    public static string Write(double kilograms, UnitSystem units)
    {
        var pounds = $"{new Mass(kilograms).Pounds.ToString("0.#########", CultureInfo.InvariantCulture)} lb";
        return units == UnitSystem.UsCustomary && Read(pounds) == kilograms ? pounds : $"{kilograms.ToString("R", CultureInfo.InvariantCulture)} kg";
    }
}
