namespace Tautline.Engine.Layout;

/// <summary>What a post does. All but <see cref="Line"/> are terminals: fabric ends or turns there.</summary>
public enum PostKind
{
    Line,
    End,
    Corner,
    Gate,
    Pull,
    GradeBreak,

    /// <summary>The height or the spec changes here.</summary>
    Change,
}
