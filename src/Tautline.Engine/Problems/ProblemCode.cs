namespace Tautline.Engine.Problems;

public enum ProblemCode
{
    // reading a job file
    FileTooLarge, FileNotJson, FileNotJob, FileField, FileNewer, FileMustUnderstand,

    // the job document
    IdMissing, IdTwice, OrderKeyBad, NotFinite,
    RuleSetUnknown, RuleSetOther, RuleUnknown, RuleValue, RulePipe,
    SpecUnknown, SpecHeight, SpecFabric, SpecDiamonds, SpecSection, SpecChoice, SpecPostSize, SpecRoll, SpecLaced, SpecTrim, SpecTrimCount, SpecTrimmed,
    CalibrationSpec, CalibrationRange,
    JobEmpty, LineShort, LegShort, LineVertexTwice, GradeSteep,
    LegUnknown, GateKind, GateSize, GateOutside, GateTooWide, GateOverlap, GatePostUnlisted,
    ObstacleKind, ObstacleRange, TieKind, TieSection, TieClosed, RunsBackUnknown,
    GroundShotLeg, GroundShotOutside, GroundShotEmpty, InstrumentUnknown, GroundFewShots, GroundMissing, GroundOutside, SnapshotBroken, SnapshotWidth,
    BuiltLegUnknown, BuiltOutside, PinOutside, WorkKind, WorkRange, TemporaryLength, GateWeightQuestion, GateClearanceQuestion, GateBeam, GatePostUnnamed,

    // the plan
    BraceQuestion, BarbHeightQuestion, BarbStrands, TerminalInZone, PinInZone, BuiltInZone, ZonesOverlap, LinesGap, PostsClose, BayTooLong, GateMoved, GateOpeningChanged, GateOnSlope, GateOnCurve, CurveCare, RunBackShort, RunBackSlope, RollerNearPost, RollerInZone,
    SelvageTwistMesh, SelvageLow, FabricInside, WallEdge, WallWidthQuestion, WallFaceNote, WallFaceQuestion, BracketProof, BracketTerminal, BracketDepth, TreeInLine, WetGround, ClosureDepth, ScreenWind, ScreenHeight,
    RollTail, RollUncalibrated, HabitOverLimit, GradeBreakTerminal,

    // hanging
    HangPlace, SeatWire, SeatPost, RollShortage, RollNone, RollUnusable, RollSeen, RollEnds,

    // the ground and the fit over it
    LevelMisses, GroundUpright, GroundGap, GroundSteep, GradeUnused, GradesOpen, FitGap, FitBroken, FitSlope, FitUnsound, GradingWanted, GroundBreakTerminal,
    StepTerminal,

    // field notes: traverse and curves
    HeadingMissing, TraverseShort, TraverseLeg, TraverseAngleMissing, TraverseAngle, TraverseAngleSum, TraversePoor,
    CurveTight, CurvePart, CurveImpossible, CurveTurn, CurvePoints, CurveInterval,

    // field readings of the fabric, and what slides on a post
    MeshNothing, MeshCountAlone, MeshCount, MeshContradicts, SqueezeRange, BiasReading, BiasTooMuch, BiasEdges, StackClash,

    // edits of a job
    EditUnknown, EditLastVertices, EditOffLeg, EditOffLine, EditGateAcross, EditGateNoRoom, EditGateSlid, EditMarkCut, EditMarkOff, EditMarksCarried, EditShotsCarried, EditWentWithLeg,
    EditSpecsDiffer, EditGradeEvened, EditStraightened, EditTieOff, EditLeanTurned, EditTurnsChanged, EditNoTurn, EditTurnRange, EditArcLength, EditSplitEnd, EditClosedAlready,
    EditOpenAlready, EditStretchEmpty, EditClearance, EditWorkWidth,
}
