using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Rod readings worked out into heights, so that a shot can go without those after it losing theirs.</summary>
internal static class Levelled
{
    /// <summary>The same shots; each whose height could be read says it.</summary>
    public static IReadOnlyList<GroundShot> Heights(IReadOnlyList<GroundShot> shots)
    {
        List<GroundShot> stated = new(shots.Count);
        Length? instrument = null;
        foreach (var shot in shots)
        {
            var height = shot.Height ?? (shot.Rod is { } rod && instrument is { } high ? high - rod : null);
            if (shot.Height is { } known && shot.Rod is { } reading) instrument = known + reading;
            if (height is { } place && shot.Again is { } again) instrument = place + again;
            stated.Add(height is null ? shot : shot with { Height = height });
        }
        return stated;
    }

    /// <summary>The ground with other shots; without any it cannot be told to come from shots.</summary>
    public static LineGround With(LineGround ground, IReadOnlyList<GroundShot> shots)
        => ground with { Shots = shots, From = shots.Count == 0 && ground.From == LineGround.FromShots ? null : ground.From };
}
