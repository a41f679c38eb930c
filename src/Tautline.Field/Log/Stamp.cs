namespace Tautline.Field.Log;

/// <summary>
/// Orders what several devices wrote: never before anything its device had seen, whatever its clock says. The tick is the greater of the device's clock, in
/// milliseconds since 1970, and one more than the greatest tick seen. People are shown the clock, never the tick.
/// </summary>
public static class Stamp
{
    /// <param name="clock">The device's clock, milliseconds since 1970.</param>
    /// <param name="seen">The greatest tick of everything the device knows; 0 where it knows nothing.</param>
    public static long Next(long clock, long seen) => Math.Max(clock, checked(seen + 1));
}
