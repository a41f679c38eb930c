// Finds what lies under a point of the screen, the smallest things first.
import { nothing, type Picture, type Point, type Target } from "./picture";
import { far, type Frame, fromPath, fromSegment, pixel } from "./view";

/** @param at on the site; @param reach in metres */
export function hit(picture: Picture, at: Point, reach: number, frame: Frame, handles: boolean, selected: Target): Target {
  const handle = handles ? corner(picture, at, reach) ?? end(picture, at, reach, selected) : undefined;
  return handle ?? mark(picture, at, frame) ?? gateAt(picture, at, reach) ?? (handles ? middle(picture, at, reach, selected) : undefined) ?? postAt(picture, at, reach) ?? along(picture, at, reach) ?? nothing;
}

function corner(picture: Picture, at: Point, reach: number): Target | undefined {
  let [best, found] = [reach * 1.2, undefined as Target | undefined];
  for (const v of picture.vertices) {
    const off = far(at, [v.east, v.north]);
    if (off < best) [best, found] = [off, { kind: "vertex", line: v.line, index: v.index, id: v.id }];
  }
  return found;
}

/** An end of the selected stretch. */
function end(picture: Picture, at: Point, reach: number, selected: Target): Target | undefined {
  for (const s of picture.stretches)
    if (s.id === selected.id && s.group === selected.kind && s.group !== "grading") {
      if (far(at, [s.path[0]!, s.path[1]!]) < reach) return { kind: s.group, line: s.line, index: 0, id: s.id, part: "from" };
      if (far(at, [s.path.at(-2)!, s.path.at(-1)!]) < reach) return { kind: s.group, line: s.line, index: 0, id: s.id, part: "to" };
    }
  return undefined;
}

/** The middle of a leg of the selected line, from which a corner is pulled. */
function middle(picture: Picture, at: Point, reach: number, selected: Target): Target | undefined {
  const line = picture.lines[selected.line];
  for (let i = 0; line && i < line.legs; i++) {
    const leg = picture.legs[line.firstLeg + i]!;
    if (far(at, [leg.east, leg.north]) < reach) return { kind: "leg", line: leg.line, index: leg.index, id: leg.id ?? "", part: "middle" };
  }
  return undefined;
}

/** Pins and problems stand above their place on the screen. */
function mark(picture: Picture, at: Point, frame: Frame): Target | undefined {
  const here = pixel(frame, at[0], at[1]);
  for (const p of picture.pins) {
    const [x, y] = pixel(frame, p.east, p.north);
    if (Math.abs(here[0] - x) < 8 && here[1] > y - 18 && here[1] < y + 3) return { kind: "pin", line: p.line, index: 0, id: p.id };
  }
  for (const p of picture.problems) {
    const [x, y] = pixel(frame, p.east, p.north);
    if (p.severity > 0 && Math.abs(here[0] - x) < 11 && Math.abs(here[1] - (y - 22)) < 11) return { kind: "problem", line: -1, index: p.index, id: "" };
  }
  return undefined;
}

/** The opening of a gate, also where its posts stand so near that they fill it. */
export function gateAt(picture: Picture, at: Point, reach: number): Target | undefined {
  for (const g of picture.gates) {
    const [middle, jamb] = [far(at, [(g.faces[0]! + g.faces[2]!) / 2, (g.faces[1]! + g.faces[3]!) / 2]), Math.min(far(at, [g.faces[0]!, g.faces[1]!]), far(at, [g.faces[2]!, g.faces[3]!]))];
    if (middle < jamb && fromPath(g.faces, at) < reach) return { kind: "gate", line: g.line, index: g.index, id: g.id };
  }
  return undefined;
}

function postAt(picture: Picture, at: Point, reach: number): Target | undefined {
  let [best, found] = [reach, -1];
  for (let i = 0; i < picture.postKinds.length; i++) {
    const [east, north] = [picture.postsAt[2 * i]! - at[0], picture.postsAt[2 * i + 1]! - at[1]];
    if (Math.abs(east) > best || Math.abs(north) > best) continue;
    const off = Math.hypot(east, north);
    if (off < best) [best, found] = [off, i];
  }
  if (found < 0) return undefined;
  const line = picture.lines.findIndex((l) => found >= l.firstPost && found < l.firstPost + l.posts);
  return { kind: "post", line, index: found - picture.lines[line]!.firstPost, id: "" };
}

function along(picture: Picture, at: Point, reach: number): Target | undefined {
  for (const g of picture.gates)
    if (fromPath(g.faces, at) < reach || g.open.some((leaf) => fromPath(leaf, at) < reach * 0.6)) return { kind: "gate", line: g.line, index: g.index, id: g.id };
  for (const s of picture.stretches)
    if (s.group !== "grading" && fromPath(s.path, at) < Math.max(reach, s.width / 2)) {
      // On the fence line itself a bay is meant; the stretch is what lies beside it.
      if (fromPath(s.path, at) > reach * 0.35 || s.kind === "tree") return { kind: s.group, line: s.line, index: 0, id: s.id };
    }
  let [best, found] = [reach, undefined as Target | undefined];
  for (let i = 0; i < picture.bays.length; i += 3) {
    const [a, b] = [picture.bays[i + 1]!, picture.bays[i + 2]!];
    const off = fromSegment(at, picture.postsAt[2 * a]!, picture.postsAt[2 * a + 1]!, picture.postsAt[2 * b]!, picture.postsAt[2 * b + 1]!);
    if (off >= best) continue;
    const line = picture.runs[4 * picture.bays[i]!]!;
    [best, found] = [off, { kind: "bay", line, index: a - picture.lines[line]!.firstPost, id: "" }];
  }
  if (found) return found;
  for (const leg of picture.legs) {
    const i = picture.lines[leg.line]!.firstLeg + leg.index;
    const off = fromPath(picture.legPoints, at, picture.legStarts[i]!, picture.legStarts[i + 1]! - 1);
    if (off < best) [best, found] = [off, { kind: "leg", line: leg.line, index: leg.index, id: leg.id ?? "" }];
  }
  return found;
}
