namespace Tautline.Engine.Tests;

public sealed class SmokeTests
{
    [Fact]
    public void RunnerWorks() => Assert.Equal(304_800_000L, 12 * 25_400_000L);
}
