using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Problems;

public enum Severity
{
    /// <summary>Worth knowing; nothing is wrong.</summary>
    Note,

    /// <summary>The job leaves open what only a person can decide.</summary>
    Question,

    /// <summary>The plan is whole but breaks a rule or leaves something out.</summary>
    Warning,

    /// <summary>There is no plan until this is put right.</summary>
    Error,
}

/// <summary>A word or a figure put into a problem's text; the figure is SI.</summary>
public readonly record struct Figure(string? Text, double Value, Unit Unit)
{
    public static implicit operator Figure(string text) => new(text, 0, Unit.Count);
    public static implicit operator Figure(Length length) => new(null, length.Metres, Unit.Length);
    public static implicit operator Figure(int count) => new(null, count, Unit.Count);
    public static implicit operator Figure(double number) => new(null, number, Unit.Ratio);
}

/// <summary>Where a problem is: a path into the job document, and a station where there is one.</summary>
public readonly record struct Place(string Path, LineId? Line = null, Length? Station = null);

/// <summary>Something a person should know about the job or the plan. Its words are made in <see cref="ProblemText"/>.</summary>
public sealed record Problem(ProblemCode Code, Place Place, IReadOnlyList<Figure> Figures)
{
    public Severity Severity => ProblemText.SeverityOf(Code);
}

/// <summary>Collects problems in the order they are met. The one mutable thing that passes through the stages.</summary>
public sealed class ProblemList
{
    private readonly List<Problem> found = [];

    public IReadOnlyList<Problem> Found => found;

    public bool HasErrors => found.Any(p => p.Severity == Severity.Error);

    public void AddRange(ProblemList others) => found.AddRange(others.found);

    public void Add(ProblemCode code, Place place, params Figure[] figures) => found.Add(new Problem(code, place, figures));
}
