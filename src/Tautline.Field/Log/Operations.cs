namespace Tautline.Field.Log;

/// <summary>The work on a fence in the order it is done.</summary>
public static class Operations
{
    public const string Stake = "stake";
    public const string Drill = "drill";
    public const string Set = "set";
    public const string Frame = "frame";
    public const string Hang = "hang";
    public const string Tie = "tie";
    public const string Gate = "gate";

    public static IReadOnlyList<string> All { get; } = [Stake, Drill, Set, Frame, Hang, Tie, Gate];

    /// <summary>True where single posts are counted.</summary>
    public static bool OfPosts(string operation) => operation is Stake or Drill or Set;
}
