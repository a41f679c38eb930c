using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.Snapshot;
using Tautline.Formats.Ground;

namespace Tautline.Desk;

/// <summary>A ground file on its way into the job: read, asked about, laid under the lines. The job keeps what lies near them.</summary>
public sealed class GroundAttach(Session session)
{
    /// <summary>A page holds the file whole; a larger one is attached on the command line.</summary>
    public const long LargestBytes = 128L << 20;

    /// <summary>How the ground file kinds are told apart by the browser's file chooser.</summary>
    public const string Accepted = ".csv,.txt,.asc,.xml,.landxml,.tif,.tiff,.pnezd,.xyz";

    private byte[] bytes = [];
    private GroundOptions options = new();

    public GroundFile? File { get; private set; }

    /// <summary>What reading and laying it had to say.</summary>
    public IReadOnlyList<Finding> Findings { get; private set; } = [];

    /// <summary>True once it lies under the lines.</summary>
    public bool Done { get; private set; }

    public IReadOnlyList<GroundQuestion> Questions => File is { HasErrors: false } file ? [.. file.Questions] : [];

    /// <summary>How far to each side of the lines the ground is kept.</summary>
    public Length Width { get; set; } = new(10);

    public void Read(string name, byte[] content)
    {
        (bytes, options, Done) = (content, new GroundOptions { SourceName = name }, false);
        ReadAgain();
    }

    public void Refuse(string name, string message, string hint)
    {
        (bytes, File, Done) = ([], null, false);
        Findings = [Finding.Error(name, message, hint)];
    }

    /// <summary>Answers a question of the file; false where the text is no answer to it.</summary>
    public bool Answer(GroundQuestion question, string text)
    {
        if (GroundAnswers.Apply(options, question.Kind, text) is not { } answered) return false;
        options = answered;
        ReadAgain();
        return true;
    }

    /// <summary>Lays the ground under the lines. The file is let go: the job holds what it needs.</summary>
    public async Task LayAsync(string label)
    {
        if (File is not { IsReady: true } file) return;
        if (GroundTarget.Of(session.Job.Coordinates) is not { } target)
        {
            Say(Finding.Error(file.SourceName, $"The job's coordinates are '{session.Job.Coordinates!.System}', which is not known.", "Name a system as EPSG:n."));
            return;
        }

        PlacedGround placed = GroundPlacement.Place(file, target);
        Findings = [.. file.Problems.Concat(placed.Problems).Select(OutlineFile.Describe)];
        if (placed.Surface is not { } surface) return;
        if (SnapshotCutter.Cut(surface, session.Job, Width, SourceOf(file)) is not { } kept)
        {
            Say(Finding.Error(file.SourceName, "None of the ground lies near a line.", "Check the coordinates of both, and the unit of the file's."));
            return;
        }

        Done = await session.Apply(job => new EditOutcome(job with { Ground = kept }, new(EditKind.Other, label), []));
        (bytes, File) = ([], null);
    }

    private void ReadAgain()
    {
        File = GroundReader.Read(bytes, options);
        Findings = [.. File.Problems.Select(OutlineFile.Describe)];
    }

    private void Say(Finding finding) => Findings = [.. Findings.Where(f => f.Severity != Severity.Error), finding];

    private static GroundSource SourceOf(GroundFile file) => new()
    {
        File = file.SourceName,
        Sha256 = file.Sha256,
        System = file.System is { EpsgCode: { } code } ? $"EPSG:{code}" : null,
        HeightUnit = file.HeightUnit is { } unit ? Tautline.Formats.Coordinates.LinearUnits.Name(unit) : null,
    };
}
