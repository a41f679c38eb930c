using System.Globalization;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Problems;

/// <summary>The words of every problem, in one place: what was found, and what would be right.</summary>
public static class ProblemText
{
    private sealed record Words(Severity Severity, string Message, string Hint);

    public static Severity SeverityOf(ProblemCode code) => Of(code).Severity;

    /// <summary>What was found, with the figures in the user's units.</summary>
    public static string Message(Problem problem, UnitSystem units) => Fill(Of(problem.Code).Message, problem, units);

    /// <summary>What would be right.</summary>
    public static string Hint(Problem problem, UnitSystem units) => Fill(Of(problem.Code).Hint, problem, units);

    private static string Fill(string template, Problem problem, UnitSystem units)
        => string.Format(CultureInfo.InvariantCulture, template, [.. problem.Figures.Select(f => (object)Show(f, units))]);

    private static string Show(Figure figure, UnitSystem units)
        => figure.Text ?? (figure.Unit == Unit.Length ? LengthText.Show(new Length(figure.Value), units) : Number(figure.Value));

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    private static Words Of(ProblemCode code) => code switch
    {
        ProblemCode.FileTooLarge => Error("The file is {0} MB; a job file is at most {1} MB.", "Check that this is a job file. Ground files are attached, not pasted into the job."),
        ProblemCode.FileNotJson => Error("The file stops being JSON: {0}.", "Mend it there, or take the last saved version of the job."),
        ProblemCode.FileNotJob => Error("This is not a job file: \"format\" is {0}.", "A job file says \"format\": \"tautline-job\"."),
        ProblemCode.FileField => Error("A value does not fit: {0}.", "See docs/job.schema.json for what belongs here."),
        ProblemCode.FileNewer => Note("The job was written by a newer version (document version {0}, this program knows {1}).", "What this program does not know is kept and written back."),
        ProblemCode.FileMustUnderstand => Error("The job says that '{0}' must be understood, and this program does not know it.", "Open the job with a newer version. Here it can be read, but not planned or changed."),
        ProblemCode.IdMissing => Error("An id is missing or empty.", "Every line, vertex, leg, gate, obstacle and spec carries an id of its own."),
        ProblemCode.IdTwice => Error("The id '{0}' is used twice.", "Ids are unique in a job. Give one of the two another id."),
        ProblemCode.OrderKeyBad => Error("The order key '{0}' is not usable.", "An order key has digits and small letters and does not end in 0, and no sibling has the same."),
        ProblemCode.NotFinite => Error("The number is not finite or far too large.", "Lengths are metres, up to 1,000,000."),
        ProblemCode.RuleSetUnknown => Error("The rule set '{0}' is not known.", "Known are: {1}. A set of your own is given as a file."),
        ProblemCode.RuleSetOther => Error("The job names the rule set '{0}' and was planned by '{1}'.", "Plan it by the set it names, or let it name the other."),
        ProblemCode.RuleUnknown => Error("The rule '{0}' is not known.", "'tautline catalog rule-keys' lists the rules by key."),
        ProblemCode.RuleValue => Error("The rule '{0}' cannot be {1}.", "A limit is a finite number above zero, in SI units; 'tautline catalog rule-keys' says which may be zero and which are 1 or 0."),
        ProblemCode.RulePipe => Error("The rule '{0}' asks for pipe of {1}, which is not in the catalogue.", "Name a section here: 'tautline catalog sections' lists them."),
        ProblemCode.SpecUnknown => Error("The spec '{0}' does not exist in this job.", "Known are: {1}."),
        ProblemCode.SpecHeight => Error("No {0} fabric is made {1} high.", "It comes in {2}."),
        ProblemCode.SpecFabric => Error("No fabric with a {0} mesh in {1} gauge is listed.", "Listed are: {2}."),
        ProblemCode.SpecDiamonds => Error("No count of diamonds is listed for a {0} mesh at {1}.", "Counts are listed for 2-in and 1 3/4-in mesh."),
        ProblemCode.SpecSection => Error("The section '{0}' is not in the catalogue.", "'tautline catalog sections' lists them."),
        ProblemCode.SpecChoice => Error("'{0}' is not a choice here.", "Write {1}."),
        ProblemCode.SpecPostSize => Error("No usual post is listed for a fence of {0}.", "Name linePost and terminalPost in the spec; heights above 12 ft need an engineer."),
        ProblemCode.SpecRoll => Error("A roll of {0} cannot be.", "Rolls are 10 to 500 ft; usual are 25, 50 and 100 ft."),
        ProblemCode.SpecTrim => Error("A fabric of {0} cannot be trimmed to {1}.", "Name a taller one that is made as cutFrom, and trim no laced widths: those come in equal ones."),
        ProblemCode.SpecTrimCount => Error("Trimming {0} of fabric to {1} takes no whole diamond off or leaves too few.", "A diamond of it is about {2} tall, and four have to stay."),
        ProblemCode.SpecTrimmed => Note("The fabric is trimmed from {0}: {1} diamonds come off its lower edge, which leaves about {2}.", "Cut wires are sharp: turn every end in, keep the cut edge down, touch up the coating; specifications may ask for an edge as it was woven."),
        ProblemCode.SpecLaced => Error("{0} laced widths cannot be.", "One to four equal widths of fabric make the height."),
        ProblemCode.TieKind => Error("A line cannot end at '{0}'.", "Write building, wall or fence."),
        ProblemCode.TieSection => Error("The standing post that the line ties to has the section '{0}', which is not in the catalogue.", "Bands and rail ends must fit it: name its section as 'tautline catalog sections' lists it."),
        ProblemCode.TieClosed => Error("A closed line has no end to tie in.", "Leave the tie out, or open the line."),
        ProblemCode.RunsBackUnknown => Error("The sliding gate '{0}' does not say which way it runs back.", "Write \"runsBack\": \"start\" or \"end\", as seen walking the leg."),
        ProblemCode.CalibrationSpec => Error("A roll calibration names the spec '{0}', which does not exist.", "Known are: {1}."),
        ProblemCode.CalibrationRange => Error("Ten pickets over {0} cannot be this mesh.", "For this mesh ten pickets measure between {1} and {2}. Count again, along the fabric."),
        ProblemCode.JobEmpty => Error("The job has no line.", "Enter a line: a tape book, a drawing or a file."),
        ProblemCode.LineShort => Error("The line has {0} vertices.", "A line needs two, a closed one three."),
        ProblemCode.LegShort => Error("The leg is {0} long.", "A leg is at least {1} and runs between two different points."),
        ProblemCode.LineVertexTwice => Error("The closed line repeats its first point at its end.", "A closed line returns to its start on its own: leave the last point out."),
        ProblemCode.GradeSteep => Error("A grade of {0} % cannot be fenced.", "Grades are at most 100 %; 12 % is written 0.12."),
        ProblemCode.LegUnknown => Error("The leg '{0}' does not exist in this job.", "Gates, obstacles and built posts name a leg by its id."),
        ProblemCode.GateKind => Warning("A gate of kind '{0}' is not planned; the fence is planned through its place.", "Known are walk, double, cantilever, rolling and overhead. The entry is kept."),
        ProblemCode.GateSize => Error("A gate opening of {0} cannot be.", "A walk gate opens 2 to 18 ft, a double gate 4 to 48 ft, a cantilever gate 6 to 30 ft, a rolling or overhead gate 6 to 60 ft."),
        ProblemCode.GateOutside => Error("The gate starts {0} along a leg that is {1} long.", "The near face lies between the start of the leg and its end, less the opening."),
        ProblemCode.GateTooWide => Error("The gate needs {0} with its posts and the leg is {1} long.", "Choose a smaller opening or put the gate on a longer leg."),
        ProblemCode.GateOverlap => Error("The gates '{0}' and '{1}' overlap or share a post.", "Leave at least {2} between their openings."),
        ProblemCode.GatePostUnlisted => Error("No gate post is listed for a leaf of {0} in a fence of {1}.", "Make it a double gate, or have the posts designed."),
        ProblemCode.ObstacleKind => Warning("An obstacle of kind '{0}' is not planned for.", "Known are no-dig, slab, rock, wall, tree, wet, swale and culvert. The entry is kept."),
        ProblemCode.ObstacleRange => Error("The obstacle runs from {0} to {1} on a leg that is {2} long.", "Both ends lie on the leg, the second beyond the first, and the clearance is not negative."),
        ProblemCode.BuiltLegUnknown => Error("The built post '{0}' names a leg that does not exist: '{1}'.", "A built post names the leg it stands on."),
        ProblemCode.BuiltOutside => Error("The built post '{0}' stands {1} along a leg that is {2} long.", "It lies between the two ends of the leg."),
        ProblemCode.PinOutside => Error("The pin '{0}' is {1} along a leg that is {2} long.", "It lies between the two ends of the leg."),
        ProblemCode.WorkKind => Warning("Work of kind '{0}' is not counted.", "Known are removal and clearing. The entry is kept."),
        ProblemCode.WorkRange => Error("The work runs from {0} to {1} on a leg that is {2} long.", "Both ends lie on the leg, the second beyond the first; counts and widths are not negative."),
        ProblemCode.TemporaryLength => Error("Temporary fence of {0} in panels of {1} cannot be.", "Both are above zero and the fence at most 100 km."),
        ProblemCode.GateWeightQuestion => Question("The gate '{0}' has no weight: how heavy is its leaf?", "Say \"leafMass\" as the gate's maker states it; posts, wheels and beam are chosen by it."),
        ProblemCode.GateClearanceQuestion => Question("The overhead gate '{0}' has no clear height: how high is its beam?", "Say \"clearance\"; its posts carry the beam, and without it they are planned as high as the fence."),
        ProblemCode.GateBeam => Warning("The posts of the overhead gate '{0}' carry a beam and its leaf; their holes here go by the height of the fence.", "Have posts, holes and beam designed, or take them from the gate's maker."),
        ProblemCode.GatePostUnnamed => Error("The {1} gate '{0}' does not name its posts.", "No table lists them: name a section in \"post\" as the gate's maker or an engineer asks."),
        ProblemCode.SelvageTwistMesh => Warning("A twisted edge on a {0} mesh is not made.", "Under 2 in both edges are knuckled (ASTM A392)."),
        ProblemCode.SelvageLow => Note("The upper edge is twisted on a fence of {0}: its points stand at reach.", "Knuckled edges are usual up to 60 in, and some towns ask for them at the top of any fence."),
        ProblemCode.FabricInside => Warning("The fabric hangs on the {0} side, the inside of this curve of {1} radius.", "Hang it on the outside: inside, the ties alone carry its pull."),
        ProblemCode.WallEdge => Warning("The wall is {0} thick and posts on it need {1}.", "Anchors and cores keep their distance from the edge. Core beside the wall, use brackets on its face, or have it engineered."),
        ProblemCode.WallWidthQuestion => Question("How thick is the wall or dock edge '{0}'?", "Say \"width\": anchors and cores must keep their distance from the edge."),
        ProblemCode.WallFaceNote => Note("Posts hang on brackets on the face of the wall '{0}': the fence stands {1} off the wall's centre.", "That is half the wall and half the post; the bracket's own stand-off comes on top. See that it stays on your side of the property line."),
        ProblemCode.WallFaceQuestion => Question("How thick is the wall '{0}' that carries the posts on its face?", "Say \"width\": the fence stands half of it off the wall's centre, and the anchors must hold in it."),
        ProblemCode.BracketProof => Warning("Posts hang on brackets on the face of the wall '{0}', the lowest {1} down; nothing here proves wall, brackets or anchors.", "Wind on the fence turns every post about the wall: have them designed by a licensed engineer before anything is ordered."),
        ProblemCode.BracketTerminal => Warning("The {0} post here hangs on brackets: the pull of the fabric goes into their anchors.", "Set it in the ground past the end of the wall, or have its brackets designed for that pull."),
        ProblemCode.BracketDepth => Error("The lowest bracket on the wall '{0}' cannot be {1} down its face.", "Say \"depth\" from the wall's top to the lowest bracket, above zero and under 100 m, or leave it out for the rule 'bracket.depth'."),
        ProblemCode.TreeInLine => Note("A tree stands in the line here ('{0}').", "No post is set in its root space. Nothing is tied or nailed to a living tree; ask who owns it before roots are cut."),
        ProblemCode.WetGround => Note("Posts stand in wet ground here ('{0}').", "Holes may cave or fill: case or pump them, and do not pour into standing water."),
        ProblemCode.ClosureDepth => Error("The {1} '{0}' has no depth.", "Say \"depth\" from the bottom of the fabric to its deepest point; the closure is counted by it."),
        ProblemCode.ScreenWind => Warning("Slats or a screen stand full in the wind on spec '{0}'; nothing here proves that its posts hold.", "Have posts and footings designed for it before the order."),
        ProblemCode.ScreenHeight => Error("A screen of {0} does not fit fabric of {1}.", "It is at most as high as the fabric; counts and spaces are above zero."),
        ProblemCode.BraceQuestion => Question("The fence is exactly {0} high: brace the terminals or not?", "Specifications differ at this height. Say \"brace\": \"yes\" or \"no\" in the spec; the plan has none."),
        ProblemCode.BarbHeightQuestion => Question("The fence is {0} high with barbed wire: is that the fabric, or the overall height with fabric of {1}?", "Say \"heightIs\": \"fabric\" or \"overall\" in the spec's barb; the plan takes it as the fabric."),
        ProblemCode.BarbStrands => Error("{0} strands do not fit this arm.", "This arm carries {1}: 3 on a single arm, 6 on a V that leans both ways."),
        ProblemCode.TerminalInZone => Warning("A {0} post stands in the no-dig stretch '{1}'.", "Move the vertex or gate, or have the place cleared. Hand or vacuum dig only as the locate allows."),
        ProblemCode.PinInZone => Warning("A post that must stand here lies in the no-dig stretch '{0}'.", "Move the vertex or have the place cleared."),
        ProblemCode.BuiltInZone => Warning("The post '{0}' stands or is pinned in the no-dig stretch '{1}' or its clearance.", "Compare the mark with what was dug, and have the line exposed before more is done here. The plan goes through the post."),
        ProblemCode.ZonesOverlap => Note("The no-dig stretches '{0}' and '{1}' overlap by {2}.", "The plan keeps posts off both. If one mark was entered twice, take one out."),
        ProblemCode.LinesGap => Note("The {0} of line '{1}' and the {2} of line '{3}' are {4} apart: a person or a dog gets through.", "Join them, or say what stands between with a tie-in."),
        ProblemCode.PostsClose => Warning("Two posts stand {0} apart.", "Under {1} their holes meet: move the gate or the vertex, or let one post serve both."),
        ProblemCode.BayTooLong => Warning("A bay is {0} long; the limit is {1}.", "The no-dig stretch leaves no place for a post. Core or plate a post there, or ask for a longer span."),
        ProblemCode.GateMoved => Note("The gate '{0}' is moved by {1} so that one post serves it and the corner or end.", "State the near face to suit, or leave it so."),
        ProblemCode.GateOpeningChanged => Warning("Between its two posts the gate '{0}' opens {1} instead of {2}.", "The leg is fixed: order the leaf to this opening, or move a vertex."),
        ProblemCode.GateOnSlope => Warning("The gate '{0}' stands on a grade of {1} %.", "Check the leaf's clearance over the highest ground of its swing before the posts are set."),
        ProblemCode.RunBackShort => Warning("The gate '{0}' needs {1} of straight run-back and the leg leaves {2}.", "Turn it round, move it along the leg, or take a double gate."),
        ProblemCode.RunBackSlope => Warning("The sliding gate '{0}' travels on a grade of {1} %: its bottom must clear ground {2} higher than at the opening.", "Set it over the highest ground of its whole travel, or grade the run-back level."),
        ProblemCode.RollerNearPost => Warning("The second roller post of the gate '{0}' stands {1} along the line from this {2} post; under {3} their holes meet.", "Pin the line post elsewhere, dig one hole for both, or ask the gate's maker whether one post can carry fence and rollers."),
        ProblemCode.RollerInZone => Warning("The second roller post of the gate '{0}' stands in the no-dig stretch '{1}' or its clearance.", "Move the gate, run it back the other way, or have the place cleared. Hand or vacuum dig only as the locate allows."),
        ProblemCode.RollTail => Warning("{0} fabric: the rolls end {1} past the last terminal.", "Less than {2} leaves nothing to pull on: take one roll more."),
        ProblemCode.RollUncalibrated => Note("Pickets of spec '{0}' are a range until a roll is calibrated.", "Measure ten pickets along a delivered roll and enter it."),
        ProblemCode.HabitOverLimit => Note("The habit of {0} bands on {1} fabric leaves a space of {2}; the limit is {3}.", "The plan keeps the limit."),
        ProblemCode.GradeBreakTerminal => Note("The grade changes by {0} %: a terminal is planned here.", "No published number says when; overrule 'terminal.gradeChange' if the fabric rolls over it."),
        ProblemCode.HangPlace => Warning("The note '{0}' on hanging lies in no run.", "Name a leg and a place on it that lies between two terminals, outside of gates."),
        ProblemCode.SeatWire => Warning("The top wire lies {0} under the top of the fabric; the rule set allows {1}.", "Raise the line posts, or let less fabric stand over the wire."),
        ProblemCode.SeatPost => Warning("With the fabric at its height the top of the line posts stands {0} above the middle of the rail.", "Shorten the line posts or lift the fabric: caps carry the rail over the post."),
        ProblemCode.RollShortage => Warning("The stock lacks {0} rolls, {1} in all.", "Order them, or count the stock again; they stand in the plan as missing."),
        ProblemCode.RollNone => Warning("There is no fabric at all for {0} pulls.", "Enter rolls of their spec as stock, or take the empty stock out."),
        ProblemCode.RollSeen => Warning("A report names roll {1} of '{0}', which the plan does not open.", "Name it as the hang plan lists it; after a change of the job rolls may be others."),
        ProblemCode.RollEnds => Warning("The two ends reported of '{0}' do not go with its {1} pickets.", "An even number of pickets shows the same state at both ends, an odd one both states: look again."),
        ProblemCode.RollUnusable => Warning("The fabric '{0}' cannot be used as it is entered (found {1}).", "Lengths and counts are above zero, no roll is shorter than the least useful piece, and its spec is one of the job's."),
        ProblemCode.GroundShotLeg => Error("A shot of the ground lies on the leg '{0}', which this line does not have.", "Name a leg of the same line."),
        ProblemCode.GroundShotOutside => Error("A shot lies {0} along a leg that is {1} long.", "It lies between the two ends of the leg."),
        ProblemCode.GroundShotEmpty => Error("A shot says neither a height nor a reading on the rod.", "State \"height\" over the job's datum, or \"rod\" as it was read."),
        ProblemCode.InstrumentUnknown => Error("The rod is read here and nothing says how high the instrument stands.", "Begin with a shot that has both a \"height\" and a \"rod\", on a point of known height."),
        ProblemCode.GroundFewShots => Error("The line takes its ground from {0} shots.", "One is the least; two ends and every break of the ground between them make a profile."),
        ProblemCode.GroundMissing => Error("The line takes its ground from the job's surface, and the job has none.", "Attach a survey or a grid, or take the ground from \"shots\" or \"grades\"."),
        ProblemCode.GroundOutside => Error("The whole line lies outside the measured ground.", "Check coordinates and units of the survey against the line; or attach the ground again after the line was moved."),
        ProblemCode.SnapshotBroken => Error("The ground kept in the job cannot be used: {0}.", "Attach it again from its file."),
        ProblemCode.SnapshotWidth => Error("The ground is kept {0} to each side of the lines.", "A width is above zero and at most 10 km."),
        ProblemCode.LevelMisses => Warning("The level run misses a known height by {0}.", "Read the rod there again; the shots since the last known height may be off by as much."),
        ProblemCode.GroundUpright => Note("Two heights of the ground at one place: {0} and {1}.", "They are taken as an upright step. If one is a slip, take it out."),
        ProblemCode.GroundGap => Warning("The ground is not known from {0} to {1} along the line.", "The plan goes straight across, level past an end. Take shots there before posts are cut."),
        ProblemCode.GroundSteep => Warning("The ground rises by {0} % here.", "No fence stands so. Are heights in feet and distances in metres, or a building or tree among the points?"),
        ProblemCode.GradeUnused => Note("The grade of {0} % of this leg is not used.", "The ground under it was measured."),
        ProblemCode.GradesOpen => Warning("The grades of the closed line end {0} off the height they began at.", "Read the grades again, or take shots."),
        ProblemCode.FitGap => Warning("The fence is asked to stand {0} over the ground; the limits are {1} to {2}.", "The nearer limit is taken. Overrule 'gap.min' or 'gap.max' where the contract says so."),
        ProblemCode.FitBroken => Warning("The fit breaks {0} by {1} here.", "Allow a remedy, move a settled top, or put a terminal here."),
        ProblemCode.FitSlope => Warning("The fit breaks {0} by {1} % here.", "Settled tops leave no other way: move one, or put a terminal here."),
        ProblemCode.FitUnsound => Warning("The fit over the ground did not come to rest; its heights are near the best but not proved.", "Look at the profile before posts are cut, and report the job."),
        ProblemCode.GradingWanted => Note("The ground does not suit the fabric in {0} places, by up to {1} here, over {2} in all.", "The list says where, how deep and how much. Have utilities located before any digging."),
        ProblemCode.GroundBreakTerminal => Note("The ground breaks here more sharply than the fabric rolls over: a terminal is planned.", "Say \"breakPosts\": \"no\" in the line's fit to grade the ground instead."),
        ProblemCode.StepTerminal => Note("The fence steps here: fabric ends on both sides of the post.", "Its post reaches the higher side."),
        ProblemCode.HeadingMissing => Error("A direction is missing.", "State it as an azimuth, a bearing or two points that differ."),
        ProblemCode.TraverseShort => Error("The traverse has {0} legs.", "A loop needs three, a traverse between two known points two."),
        ProblemCode.TraverseLeg => Error("Leg {0} of the traverse is {1} long.", "A leg is longer than zero; its way is told by its direction."),
        ProblemCode.TraverseAngleMissing => Error("No angle stands after leg {0} of the traverse.", "Every leg but the last is followed by an angle."),
        ProblemCode.TraverseAngle => Error("The angle after leg {0} of the traverse is {1} degrees.", "A turn is less than 180 degrees to either side; an angle between legs is more than 0 and less than 360."),
        ProblemCode.TraverseAngleSum => Error("The angles of the traverse sum to {0} degrees and should to {1}; up to {2} off is a slip.", "Look for an angle read on the outer side or to the wrong hand, or a leg left out."),
        ProblemCode.TraversePoor => Warning("The traverse misses its end by {0} in {1}, 1:{2}; asked for is 1:{3}.", "Measure the doubtful leg again. Spreading the misclosure hides a blunder and does not mend it."),
        ProblemCode.CurveTight => Error("A radius of {0} is too tight for ends {1} apart.", "The radius is at least half of that, {2}."),
        ProblemCode.GateOnCurve => Error("The gate '{0}' stands on a curve.", "A leaf is straight: put the gate on a straight leg, or break the curve with one."),
        ProblemCode.CurveCare => Note("A curve of {0} radius begins here: hang the fabric on the {1} side, the outside.", "Inside, the ties alone would carry its pull. The rail is bent or cut to the chords; every post on the curve is pulled inwards."),
        ProblemCode.CurvePart => Error("The {0} of a curve cannot be {1}.", "Lengths are above zero, a bulge is not zero, delta is more than 0 and less than 360 degrees."),
        ProblemCode.CurveImpossible => Error("No curve has a {0} of {1} and a {2} of {3}.", "A chord is at most two radii and less than two tangents, a middle ordinate less than two radii, an external less than its tangent, an arc less than a circle; tangent and external need a delta under 180 degrees."),
        ProblemCode.CurveTurn => Error("No curve joins two tangents that turn by {0} degrees.", "They turn by more than 0 and less than 180 degrees."),
        ProblemCode.CurvePoints => Error("The three points of a curve lie on a line.", "Take a second point well off the line from the first to the third."),
        ProblemCode.CurveInterval => Error("Stakes cannot stand every {0} on a curve of {1}.", "The interval is above zero and gives at most {2} stakes."),
        ProblemCode.MeshNothing => Error("Nothing was measured on the fabric.", "Measure ten pickets along the fabric, or count diamonds over a height, or pinch two wires and measure the gap."),
        ProblemCode.MeshCountAlone => Error("A count of diamonds stands without the height it was made over, or the height without its count.", "Give both: so many diamonds, selvages left out, over a height measured plumb."),
        ProblemCode.MeshCount => Error("{0} diamonds over {1} cannot be this mesh.", "A diamond of this mesh is {2} to {3} tall. Count again, plumb, and leave the selvages out."),
        ProblemCode.MeshContradicts => Error("Ten pickets and the count of diamonds contradict each other: the wire's leg along a diamond would be {0}.", "In this mesh it is {1} to {2}, and stretching does not change it. Measure both again on the same stretch of fabric."),
        ProblemCode.SqueezeRange => Error("A gap of {0} cannot be left between two wires pinched together.", "It is between nothing and the mesh opening, {1}; about 1/4 to 1/2 in is right (common practice)."),
        ProblemCode.BiasReading => Error("The reading along the {0} edge is {1}.", "Mark one picket short of where the bar will stand, and measure from it outwards along both edges: both readings are above zero."),
        ProblemCode.BiasTooMuch => Error("Top and bottom differ by {0}, more than fabric of this height is raked and cut.", "The most is {1}. Measure both edges from the same picket; if it is so, step the fence there."),
        ProblemCode.BiasEdges => Error("By the readings the {0} has to reach farther by {1}; by the slope of the rail it is the {2}.", "See whether top and bottom were exchanged. If not, the rail slopes the other way: correct the ground and plan again."),
        ProblemCode.StackClash => Warning("The {0} at diamond {1} would sit on the {2}, and no move of half or one diamond keeps the limit.", "Move the {2}, or add a band."),
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "a problem without words"),
    };

    private static Words Note(string message, string hint) => new(Severity.Note, message, hint);
    private static Words Question(string message, string hint) => new(Severity.Question, message, hint);
    private static Words Warning(string message, string hint) => new(Severity.Warning, message, hint);
    private static Words Error(string message, string hint) => new(Severity.Error, message, hint);
}
