using Tautline.Cli.Output;
using Tautline.Documents.Paper;
using Tautline.Papers.Paper;

namespace Tautline.Cli.Papers;

/// <param name="Paper">Its word on the command line.</param>
/// <param name="Size">Nothing where none was asked for.</param>
/// <param name="Against">The job before, for a revision.</param>
/// <param name="Fact">What is calculated, for a calculation.</param>
internal sealed record PapersOptions(PlanningOptions Planning, string Paper, string Language, PaperSize? Size, string? Against, string? Fact, Target Target);
