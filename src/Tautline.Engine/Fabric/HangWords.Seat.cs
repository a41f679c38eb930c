using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

public static partial class HangWords
{
    /// <summary>Where the fabric hangs, a sentence each: seat, rail, gap.</summary>
    public static IReadOnlyList<string> Seat(Seat seat, UnitSystem units)
    {
        var words = new PlanWords(units);
        var on = seat.On == SeatOn.Rail ? "middle of the top rail" : "top wire";
        var tail = seat.Tail > Length.Zero ? $", {words.Short(seat.Tail)} of it the twist" : "";
        List<string> lines =
        [
            $"Middle of the top diamond on the {on}: top of the fabric {Range(seat.TopOver, words)} over it{tail} (common practice, verify).",
            $"The {(seat.On == SeatOn.Rail ? "rail's middle" : "wire")} is {Range(seat.Carrier, words)} over the ground, {Range(seat.CapOffset, words)} over the line post's top.",
            $"Under the fabric {Range(seat.Gap, words)}.",
        ];
        if (seat is { WireHighEnough: false, WireAtMost: { } most }) lines.Add($"The rule set wants the wire at most {words.Short(most)} under the top of the fabric.");
        return lines;
    }

    private static string Range(LengthRange range, PlanWords words) => Between(words.Signed(range.Low), words.Signed(range.High));
}
