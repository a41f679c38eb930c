namespace Tautline.Engine.Problems;

public enum ProblemCode
{
    // reading a job file
    FileTooLarge, FileNotJson, FileNotJob, FileField, FileNewer, FileMustUnderstand,

    // the job document
    IdMissing, IdTwice, OrderKeyBad, NotFinite,
    RuleSetUnknown, RuleSetOther, RuleUnknown, RuleValue, RulePipe,
    SpecUnknown, SpecHeight, SpecFabric, SpecDiamonds, SpecSection, SpecChoice, SpecPostSize, SpecRoll,
    CalibrationSpec, CalibrationRange,
    JobEmpty, LineShort, LegShort, LineVertexTwice, GradeSteep,
    LegUnknown, GateKind, GateSize, GateOutside, GateTooWide, GateOverlap, GatePostUnlisted,
    ObstacleKind, ObstacleRange,
    BuiltLegUnknown, BuiltOutside,

    // the plan
    BraceQuestion, TerminalInZone, PinInZone, PostsClose, BayTooLong, GateMoved, GateOpeningChanged, GateOnSlope,
    RollTail, RollUncalibrated, HabitOverLimit, GradeBreakTerminal, SteepRake,
}
