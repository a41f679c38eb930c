using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

/// <summary>Ground and fit in a tape book, both ways.</summary>
public sealed class GroundBookTests
{
    private const string Book = """
        spec lot height 6'
        line bank
        tie start to fence section 2.875-sch40 top 106' 6"
        fit stepped gap 1" remedies trim grading break-posts no
        leg 80'
        shot 0' height 100' rod 5.2'
        shot 31' rod 4.1'
        shot 80' rod 3.6' again 5.8'
        pin 40' top 107'
        leg 60'
        shot 60' rod 5.1'
        """;

    [Fact]
    public void ShotsAndFitAreReadAndWritten()
    {
        var read = TapeBookReader.Read(Book);
        Assert.Empty(read.Problems);
        var line = read.Job!.Lines[0];
        Assert.Equal(4, line.Ground!.Shots.Count);
        Assert.Equal((5.2, 5.8), (Math.Round(line.Ground.Shots[0].Rod!.Value.Feet, 9), Math.Round(line.Ground.Shots[2].Again!.Value.Feet, 9)));
        Assert.Equal(("stepped", "no"), (line.Fit!.Mode, line.Fit.BreakPosts));
        Assert.Equal(["trim", "grading"], line.Fit.Remedies!);
        Assert.Equal(106.5, line.Start!.Top!.Value.Feet, 9);
        Assert.Equal(107, read.Job.Pins[0].Top!.Value.Feet, 9);
        var written = TapeBookWriter.Write(read.Job, UnitSystem.UsCustomary);
        Assert.Empty(written.Problems);
        Assert.Equal(JobFile.Write(read.Job), JobFile.Write(TapeBookReader.Read(written.Text).Job!));
    }

    [Theory]
    [InlineData("shot 31'", "height")]
    [InlineData("shot 31' again 4'", "height")]
    [InlineData("shot 90' height 4'", "80")]
    [InlineData("fit wavy", "smooth")]
    [InlineData("fit smooth remedies", "trim")]
    [InlineData("fit smooth break-posts perhaps", "yes")]
    public void ASlipIsTold(string statement, string says)
    {
        var read = TapeBookReader.Read($"spec lot height 6'\nline bank\nleg 80'\n{statement}\n");
        var problem = Assert.Single(read.Problems);
        Assert.Equal(4, problem.Line);
        Assert.Contains(says, problem.Message + problem.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatABookCannotSayIsTold()
    {
        var job = TapeBookReader.Read(Book).Job!;
        var line = job.Lines[0];
        var turned = job with { Lines = [line with { Ground = line.Ground! with { Shots = [.. line.Ground.Shots.Reverse()] } }] };
        Assert.Contains(TapeBookWriter.Write(turned, UnitSystem.UsCustomary).Problems, p => p.Message.Contains("measured ground", StringComparison.Ordinal));
    }
}
