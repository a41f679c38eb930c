using CsCheck;

namespace Tautline.Engine.Tests.TapeBook;

/// <summary>Books that say anything the notation has, most of it or little; as people type it, in sixty-fourths.</summary>
internal static class GenBook
{
    private static readonly Gen<string> genInches = Gen.Select(Gen.Int[1, 40], Gen.Int[0, 63]).Select(i => $"{i.Item1} {i.Item2}/64\"");
    private static readonly Gen<string> genSmall = Gen.Select(Gen.Int[1, 11], Gen.Int[0, 63]).Select(i => $"{i.Item1} {i.Item2}/64\"");
    private static readonly Gen<string> genMass = Gen.Select(Gen.Int[1, 3000], Gen.Bool).Select(m => m.Item2 ? $"{m.Item1}.25 lb" : $"{m.Item1}.7 kg");

    private static readonly Gen<string> genSpec = Joined(
        Said("selvage", "KK", "KT", "TK", "TT"), Said("middle", "rail"), Said("bottom", "rail", "wire", "none"), Said("laced", "1", "2", "4"),
        Said("line-support", "concrete", "driven", "cored", "plated"), Said("terminal-support", "concrete", "cored", "plated"),
        Said("barb", "3 left", "3 up height-is fabric", "6 both height-is overall"), Said("coating", "zinc", "aluminum", "polymer"),
        Said("colour", "green", "olive-green", "brown", "black"), Said("slats", "37", "41.125 lock top", "0.1 lock bottom"),
        Maybe(genInches.Select(i => $"screen {i}")), Maybe(Gen.Select(genInches, genInches).Select(i => $"concertina {i.Item1} ties {i.Item2}")));

    private static readonly Gen<string> genGates = Lines(
        Gen.Select(genInches, Word("start", "end")).Select(g => $"gate cantilever 20' from {g.Item1} run-back {g.Item2}"),
        Gen.Select(genSmall, genMass).Select(g => $"gate rolling 24' from 40' {g.Item1} run-back end post 4.000-sch40 leaf {g.Item2}"),
        Gen.Select(genInches, genMass).Select(g => $"gate overhead 24' centred at 90' run-back start post \"a post\" leaf {g.Item2} clearance {g.Item1}"),
        Gen.Const("gate walk 4' from 130' post 2.875-sch40"), genSmall.Select(i => $"gate double 8' from 140' {i}"));

    private static readonly Gen<string> genStretches = Lines(
        Stretch("no-dig", "", "clear 2' 6 1/64\""), Stretch("slab", "", "cored", "plated"), Stretch("rock", "", "cored"), Stretch("wall", "", "width 8\"", "width 10\" plated", "bracketed width 8\" depth 2' 1/64\""),
        Stretch("tree", "", "clear 1'"), Stretch("wet", "", "cored"), Stretch("swale", "depth 18\"", "depth 1/64\""), Stretch("culvert", "depth 2' 3/64\""),
        Stretch("removal", "", "posts 0", "posts 12 cut", "pulled"), Stretch("clearing", "width 4'"),
        genInches.Select(i => $"pin {i}"), genSmall.Select(i => $"pin 60' {i} stands"));

    private static readonly Gen<string> genLine = Lines(
        Word("tie start to building", "tie start to wall", "tie start to fence section \"their post\" woven"),
        Word("tie finish to fence section 2.375-sch40", "tie finish to fence section 2.375-sch40 bar"),
        Word("fabric left", "fabric right"), Word("keeps rail", "keeps line-posts wire"));

    private static readonly Gen<string> genWalk = Word(
        "leg 200'", "arc right radius 150' turn 90°", "arc left radius 100' 3/64\" turn 143°07'", "arc right radius 300' length 200' bearing N 12°34'56\" W",
        "leg 200' up 7%", "arc right radius 200' length 222' 1/8\" down 1:8");

    /// <summary>A point is far enough away only from where the line starts.</summary>
    private static readonly Gen<string> genFirst = Gen.OneOf(genWalk, Word("arc left radius 300' to 210' west 50' south", "leg to 210' east 50' south"));

    private static readonly Gen<string> genHead = Lines(
        Word("temporary 300' panel 12' closed \"front\"", "temporary 1/64\""), Word("temporary 41' 7 3/64\" \"front\"", "temporary 90'"));

    public static Gen<string> Any { get; } = Gen.Select(genHead, genSpec, genLine, genFirst, Gen.Select(genWalk, genGates, genStretches).Array[1, 3]).Select(
        b => $"spec a height 6'{b.Item2}\n{b.Item1}measured level\nline b\n{b.Item3}"
             + string.Join("R 90\n", b.Item5.Select((w, i) => Legs(i == 0 ? b.Item4 : w.Item1) + w.Item2 + w.Item3)));

    /// <summary>A bearing or a point stands in place of a turn, so a straight leg takes the turn first.</summary>
    private static string Legs(string walk) => $"leg 10'\n{walk}\n";

    private static Gen<string> Word(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static Gen<string> Said(string clause, params string[] values) => Maybe(Word(values).Select(v => $"{clause} {v}"));

    private static Gen<string> Maybe(Gen<string> gen) => Gen.Select(gen, Gen.Bool).Select(g => g.Item2 ? g.Item1 : "");

    private static Gen<string> Stretch(string kind, params string[] clauses) => Gen.Select(genInches, Word(clauses), Gen.Bool).Select(
        s => $"{kind} {s.Item1} to 70' {s.Item2} {(s.Item3 ? "\"a note\"" : "")}");

    private static Gen<string> Joined(params Gen<string>[] parts)
        => parts.Aggregate(Gen.Const(""), (all, part) => Gen.Select(all, part).Select(p => p.Item2 == "" ? p.Item1 : $"{p.Item1} {p.Item2}"));

    private static Gen<string> Lines(params Gen<string>[] parts)
        => parts.Aggregate(Gen.Const(""), (all, part) => Gen.Select(all, Maybe(part)).Select(p => p.Item2 == "" ? p.Item1 : $"{p.Item1}{p.Item2}\n"));
}
