using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Documents.Words;

/// <summary>How far a post stands from where it was drawn, in words a crew uses: no signs.</summary>
public static class OffsetPhrases
{
    /// <summary>Above zero ahead along the line; empty where it is too little for a tape.</summary>
    public static string Along(this Phrases say, PlanWords words, Length along) => Told(say, words, along, "asbuilt.ahead", "asbuilt.back");

    /// <summary>Above zero to the right of the line walked forward; empty where it is too little for a tape.</summary>
    public static string Off(this Phrases say, PlanWords words, Length off) => Told(say, words, off, "asbuilt.right", "asbuilt.left");

    private static string Told(Phrases say, PlanWords words, Length length, string above, string below)
    {
        Length far = Length.Abs(length);
        if (far < Length.FromInches(1.0 / 16)) return "";
        return say.Say(length > Length.Zero ? above : below, ("length", far < Length.FromFeet(1) ? words.Short(far) : words.Long(far)));
    }
}
