using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

public static partial class HangWords
{
    /// <summary>How a run is stretched, and why so, without a stop.</summary>
    public static string Method(RunHang hang, UnitSystem units)
    {
        var words = new PlanWords(units);
        var pullers = hang.Pullers > 1 ? "an upper and a lower puller: setting the lower one slackens the upper, watch that it does not drop" : "one puller";
        var with = hang.PullBar is { } bar ? $", pull bar about {words.Short(bar)} wide, {pullers}" : "";
        return hang.Method switch
        {
            HangMethod.Machine => $"by machine{with}{Why(hang.Reason)}",
            HangMethod.Hand => $"by hand{with}{Why(hang.Reason)}",
            _ => "with a short puller",
        };
    }

    private static string Why(HangReason reason) => reason switch
    {
        HangReason.Wet => ", for no machine drives on the wet ground here",
        HangReason.Steep => ", for the ground is steeper than a machine works on",
        HangReason.Stated => ", as the job says",
        _ => "",
    };
}
