// Draws the picture on a canvas. What lies outside the frame is left out; posts nearer to each other than they can be told apart are thinned.
import { type Ghost } from "./ghost";
import type { Ink } from "./ink";
import { type Picture, type Point, Post, same, type Target } from "./picture";
import * as symbols from "./symbols";
import { gateAt } from "./hits";
import { type Frame, middle, pixel } from "./view";

export interface Scene { picture: Picture; selected: Target; hovered: Target; ghost: Ghost; hang: boolean; editing: boolean; cursor: Target }

export class Painter {
  private readonly patterns = new Map<string, CanvasPattern | string>();
  private readonly taken: [number, number, number, number][] = [];

  constructor(private readonly pen: CanvasRenderingContext2D, private readonly ink: Ink, private readonly ratio: number) {}

  paint(scene: Scene, frame: Frame): void {
    const { pen } = this;
    this.taken.length = 0;
    this.reserve(scene, frame);
    pen.save();
    pen.scale(this.ratio, this.ratio);
    pen.lineJoin = pen.lineCap = "round";
    this.stretches(scene, frame);
    this.lines(scene, frame);
    if (scene.picture.legs.length < 4000) this.stations(scene, frame);
    this.marks(scene, frame);
    this.posts(scene, frame);
    this.gates(scene, frame);
    if (scene.hang) this.hang(scene, frame);
    for (const pin of scene.picture.pins) this.seen(frame, pin.east, pin.north, (at) => symbols.pin(pen, this.ink, at, pin.stands));
    for (const tie of scene.picture.ties) this.seen(frame, tie.east, tie.north, (at) => this.tie(at, tie.azimuth, tie.kind));
    if (scene.editing) this.handles(scene, frame);
    this.measures(scene, frame);
    for (const problem of scene.picture.problems)
      if (problem.severity > 0) this.seen(frame, problem.east, problem.north, (at) => symbols.problem(pen, this.ink, problem.severity, at));
    this.pointed(scene, frame);
    this.ghost(scene.ghost, frame);
    this.margin(scene, frame);
    pen.restore();
  }

  /** Where signs and posts that end a stretch will stand no words are put. */
  private reserve({ picture, editing }: Scene, frame: Frame): void {
    for (const p of picture.problems) if (p.severity > 0) this.seen(frame, p.east, p.north, ([x, y]) => this.taken.push([x - 11, y - 33, x + 11, y - 6]));
    for (const p of picture.pins) this.seen(frame, p.east, p.north, ([x, y]) => this.taken.push([x - 7, y - 16, x + 7, y]));
    if (editing && picture.vertices.length < 500) for (const v of picture.vertices) this.seen(frame, v.east, v.north, ([x, y]) => this.taken.push([x - 8, y - 8, x + 8, y + 8]));
    this.taken.push([frame.width - 42, 0, frame.width, 62]);
  }

  private seen(frame: Frame, east: number, north: number, draw: (at: Point) => void): void {
    const at = pixel(frame, east, north);
    if (at[0] > -40 && at[1] > -40 && at[0] < frame.width + 40 && at[1] < frame.height + 40) draw(at);
  }

  private path(frame: Frame, path: ArrayLike<number>, first = 0, last = path.length / 2): boolean {
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    this.pen.beginPath();
    for (let i = first; i < last; i++) {
      const [x, y] = pixel(frame, path[2 * i]!, path[2 * i + 1]!);
      if (i === first) this.pen.moveTo(x, y);
      else this.pen.lineTo(x, y);
      left = Math.min(left, x); right = Math.max(right, x); top = Math.min(top, y); bottom = Math.max(bottom, y);
    }
    return right > -50 && bottom > -50 && left < frame.width + 50 && top < frame.height + 50;
  }

  private pattern(kind: string): CanvasPattern | string {
    let found = this.patterns.get(kind);
    if (!found) {
      found = symbols.hatch(this.pen, this.ink, kind, this.ratio);
      if (typeof found !== "string") found.setTransform(new DOMMatrix().scale(1 / this.ratio));
      this.patterns.set(kind, found);
    }
    return found;
  }

  private stretches(scene: Scene, frame: Frame): void {
    const { pen, ink } = this;
    pen.lineCap = "butt";
    for (const stretch of scene.picture.stretches) {
      const width = Math.max(stretch.group === "obstacle" ? 18 : 12, stretch.width / frame.resolution);
      if (stretch.around.length && this.path(frame, stretch.around)) {
        pen.setLineDash([2, 3]);
        pen.strokeStyle = ink.faint;
        this.band(frame, stretch.around, width + 4, false);
        pen.setLineDash([]);
      }
      if (!this.path(frame, stretch.path)) continue;
      pen.lineWidth = width;
      pen.strokeStyle = this.pattern(stretch.kind);
      pen.stroke();
      pen.strokeStyle = stretch.kind === "no-dig" ? ink.error : ink.faint;
      this.band(frame, stretch.path, width, stretch.group === "obstacle");
      const centre = middle(stretch.path);
      const at = pixel(frame, centre.at[0], centre.at[1]);
      if (stretch.kind === "tree") symbols.tree(pen, ink, at, Math.max(10, width / 2));
      this.label(short(stretch.words), [at[0] + Math.sin(centre.angle) * (width / 2 + 9), at[1] - Math.cos(centre.angle) * -(width / 2 + 9)], centre.angle, frame, 11);
    }
    pen.lineCap = "round";
  }

  /** The two ends of a band across its path, and its sides where it is a thing of its own. */
  private band(frame: Frame, path: number[], width: number, sides: boolean): void {
    const { pen } = this;
    pen.lineWidth = this.ink.pen;
    const points: Point[] = [];
    for (let i = 0; i < path.length; i += 2) points.push(pixel(frame, path[i]!, path[i + 1]!));
    if (points.length < 2) return;
    const side = (hand: number): Point[] => points.map((p, i) => {
      const [a, b] = [points[Math.max(0, i - 1)]!, points[Math.min(points.length - 1, i + 1)]!];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
      return [p[0] - ((b[1] - a[1]) / length) * hand, p[1] + ((b[0] - a[0]) / length) * hand];
    });
    const [left, right] = [side(-width / 2), side(width / 2)];
    for (const at of [0, points.length - 1]) { symbols.polyline(pen, [left[at]!, right[at]!]); pen.stroke(); }
    if (sides) for (const edge of [left, right]) { symbols.polyline(pen, edge); pen.stroke(); }
  }

  private lines({ picture }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    for (const line of picture.lines) {
      pen.lineWidth = ink.pen * 1.8;
      pen.strokeStyle = ink.ink;
      pen.setLineDash(line.posts ? [] : [7, 5]);
      for (let leg = line.firstLeg; leg < line.firstLeg + line.legs; leg++)
        if (this.path(frame, picture.legPoints, picture.legStarts[leg]!, picture.legStarts[leg + 1]!)) pen.stroke();
      pen.setLineDash([]);
    }
    // Over the openings of gates there is no fence.
    pen.strokeStyle = ink.paper;
    pen.lineWidth = ink.pen * 1.8 + 2;
    for (const gate of picture.gates) if (this.path(frame, gate.faces)) pen.stroke();
  }

  private stations({ picture }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    const spacing = picture.stations.length > 1 ? Math.hypot(picture.stations[1]!.east - picture.stations[0]!.east, picture.stations[1]!.north - picture.stations[0]!.north) / frame.resolution : 99;
    if (spacing < 5) return;
    pen.strokeStyle = ink.faint;
    pen.lineWidth = ink.pen;
    for (const mark of picture.stations)
      this.seen(frame, mark.east, mark.north, ([x, y]) => {
        const [right, down] = [Math.cos((mark.azimuth * Math.PI) / 180), Math.sin((mark.azimuth * Math.PI) / 180)]; // to the left of the line
        symbols.polyline(pen, [[x - right * 7, y - down * 7], [x - right * 16, y - down * 16]]);
        pen.stroke();
        if (spacing > 60) this.label(mark.words, [x - right * 28, y - down * 26], 0, frame, 11, ink.faint);
      });
  }

  private marks({ picture, hovered, selected }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    for (const [target, width, dash] of [[selected, 9, []], [hovered, 6, []]] as [Target, number, number[]][]) {
      pen.strokeStyle = ink.accent;
      pen.globalAlpha = target === selected ? 0.4 : 0.28;
      pen.lineWidth = width;
      pen.setLineDash(dash);
      if (this.targetPath(picture, target, frame)) pen.stroke();
      pen.globalAlpha = 1;
      pen.setLineDash([]);
    }
  }

  /** Lays down the path of what is pointed at along the line; false where it is a place. */
  private targetPath(picture: Picture, target: Target, frame: Frame): boolean {
    const line = picture.lines[target.line];
    switch (target.kind) {
      case "bay": case "run": {
        if (!line) return false;
        this.pen.beginPath();
        for (let i = 0; i < picture.bays.length; i += 3) {
          const run = picture.bays[i]!;
          if (picture.runs[4 * run] !== target.line) continue;
          if (target.kind === "bay" ? picture.bays[i + 1] !== line.firstPost + target.index : picture.runs[4 * run + 1] !== target.index) continue;
          const [a, b] = [picture.bays[i + 1]!, picture.bays[i + 2]!];
          this.pen.moveTo(...pixel(frame, picture.postsAt[2 * a]!, picture.postsAt[2 * a + 1]!));
          this.pen.lineTo(...pixel(frame, picture.postsAt[2 * b]!, picture.postsAt[2 * b + 1]!));
        }
        return true;
      }
      case "leg": return !!line && target.index < line.legs && this.path(frame, picture.legPoints, picture.legStarts[line.firstLeg + target.index]!, picture.legStarts[line.firstLeg + target.index + 1]!);
      case "line":
        if (!line) return false;
        this.pen.beginPath();
        for (let leg = line.firstLeg; leg < line.firstLeg + line.legs; leg++)
          for (let i = picture.legStarts[leg]!; i < picture.legStarts[leg + 1]!; i++) {
            const at = pixel(frame, picture.legPoints[2 * i]!, picture.legPoints[2 * i + 1]!);
            if (i === picture.legStarts[leg]) this.pen.moveTo(...at);
            else this.pen.lineTo(...at);
          }
        return true;
      case "obstacle": case "work": case "grading": {
        const found = picture.stretches.find((s) => s.group === target.kind && (target.id ? s.id === target.id : s.line === target.line && s.id === String(target.index)));
        return !!found && this.path(frame, found.path);
      }
      case "gate": {
        const found = picture.gates.find((g) => g.id === target.id);
        return !!found && this.path(frame, found.faces);
      }
      default: return false;
    }
  }

  private posts({ picture }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    const [at, kinds] = [picture.postsAt, picture.postKinds];
    let [lastX, lastY] = [-99, -99];
    const size = frame.resolution < 0.03 ? 7 : frame.resolution < 0.12 ? 5.5 : 4.5;
    const terminals: number[] = [];
    pen.fillStyle = ink.ink;
    pen.beginPath();
    for (let i = 0; i < kinds.length; i++) {
      const [x, y] = pixel(frame, at[2 * i]!, at[2 * i + 1]!);
      if (x < -9 || y < -9 || x > frame.width + 9 || y > frame.height + 9) continue;
      if (kinds[i] !== Post.line) { terminals.push(i); continue; }
      if (Math.abs(x - lastX) + Math.abs(y - lastY) < 6) continue;
      [lastX, lastY] = [x, y];
      pen.moveTo(x + size * 0.55, y);
      pen.arc(x, y, size * 0.55, 0, 7);
    }
    pen.fill();
    [lastX, lastY] = [-99, -99];
    for (const i of terminals) {
      const [x, y] = pixel(frame, at[2 * i]!, at[2 * i + 1]!);
      if (terminals.length > 300 && Math.abs(x - lastX) + Math.abs(y - lastY) < 9) continue;
      [lastX, lastY] = [x, y];
      symbols.post(pen, ink, kinds[i]!, [x, y], size);
    }
  }

  private gates({ picture }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    for (const gate of picture.gates) {
      if (!this.path(frame, gate.faces)) continue;
      const slides = gate.arcs.length === 0;
      pen.strokeStyle = ink.ink;
      pen.lineWidth = ink.pen;
      pen.setLineDash([4, 3]);
      for (const arc of gate.arcs) if (this.path(frame, arc)) pen.stroke();
      for (const leaf of slides ? gate.open : gate.leaves) if (this.path(frame, leaf)) pen.stroke();
      pen.setLineDash([]);
      pen.lineWidth = ink.pen * 3;
      for (const leaf of slides ? gate.leaves : gate.open) if (this.path(frame, leaf)) pen.stroke();
      if (gate.roller.length) this.seen(frame, gate.roller[0]!, gate.roller[1]!, (at) => symbols.post(pen, ink, Post.gate, at, 4));
      const [a, b] = [pixel(frame, gate.faces[0]!, gate.faces[1]!), pixel(frame, gate.faces[2]!, gate.faces[3]!)];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
      const [x, y] = [(a[0] + b[0]) / 2 - ((b[1] - a[1]) / length) * 14, (a[1] + b[1]) / 2 + ((b[0] - a[0]) / length) * 14];
      this.label(gate.words, [x, y], Math.atan2(b[1] - a[1], b[0] - a[0]), frame, 11);
    }
  }

  private hang({ picture }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    pen.strokeStyle = ink.accent;
    for (const pull of picture.pulls) {
      const [a, b] = [pixel(frame, pull.path[0]!, pull.path[1]!), pixel(frame, pull.path[2]!, pull.path[3]!)];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length < 24) continue;
      const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
      const off = (x: number, y: number): Point => [x - uy * 12, y + ux * 12];
      const [from, to] = [off(a[0] + ux * 8, a[1] + uy * 8), off(b[0] - ux * 8, b[1] - uy * 8)];
      pen.lineWidth = ink.pen * 1.5;
      symbols.polyline(pen, [from, to]);
      pen.stroke();
      symbols.polyline(pen, [[to[0] - ux * 9 - uy * 4, to[1] - uy * 9 + ux * 4], to, [to[0] - ux * 9 + uy * 4, to[1] - uy * 9 - ux * 4]]);
      pen.stroke();
      this.label(String(pull.order), [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], 0, frame, 11, ink.accent);
    }
    for (const drop of picture.drops)
      this.seen(frame, drop.east, drop.north, ([x, y]) => {
        pen.beginPath();
        pen.arc(x, y + 20, 8, 0, 7);
        pen.setLineDash(drop.certain ? [] : [2, 2]);
        pen.lineWidth = ink.pen * 1.4;
        pen.stroke();
        pen.setLineDash([]);
        pen.beginPath();
        pen.arc(x, y + 20, 3, 0, 7);
        pen.stroke();
        if (drop.rolls > 1) symbols.words(pen, ink, `${drop.rolls}×`, [x + 16, y + 20], { size: 11 });
      });
  }

  private tie([x, y]: Point, azimuth: number, kind: string): void {
    const { pen, ink } = this;
    const [e, n] = [Math.sin((azimuth * Math.PI) / 180), -Math.cos((azimuth * Math.PI) / 180)];
    pen.strokeStyle = ink.ink;
    pen.lineWidth = ink.pen * 2.5;
    const [ax, ay] = [x + e * 9, y + n * 9];
    symbols.polyline(pen, [[ax - n * 16, ay + e * 16], [ax + n * 16, ay - e * 16]]);
    pen.stroke();
    pen.lineWidth = ink.pen;
    for (let i = -2; i <= 2; i++) { symbols.polyline(pen, [[ax - n * i * 7, ay + e * i * 7], [ax - n * (i * 7 - 5) + e * 7, ay + e * (i * 7 - 5) + n * 7]]); pen.stroke(); }
    symbols.words(pen, ink, kind, [x + e * 34, y + n * 24], { size: 11 });
  }

  private handles({ picture, selected, hovered }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    if (picture.vertices.length > 2000 && frame.resolution > 0.5) return;
    for (const vertex of picture.vertices)
      this.seen(frame, vertex.east, vertex.north, ([x, y]) => {
        pen.beginPath();
        pen.rect(x - 8, y - 8, 16, 16);
        pen.strokeStyle = ink.accent;
        pen.lineWidth = 1.5;
        pen.stroke();
      });
    for (const target of [selected, hovered]) {
      const line = picture.lines[target.line];
      if (!line) continue;
      for (let leg = line.firstLeg; leg < line.firstLeg + line.legs && line.legs < 200; leg++) {
        const part = picture.legs[leg]!;
        if (gateAt(picture, [part.east, part.north], 10 * frame.resolution)) continue;
        this.seen(frame, part.east, part.north, ([x, y]) => {
          pen.beginPath();
          pen.arc(x, y, 7, 0, 7);
          pen.fillStyle = ink.paper;
          pen.fill();
          pen.strokeStyle = ink.accent;
          pen.lineWidth = 1.5;
          pen.stroke();
          symbols.polyline(pen, [[x - 4, y], [x + 4, y]]);
          pen.stroke();
          symbols.polyline(pen, [[x, y - 4], [x, y + 4]]);
          pen.stroke();
        });
      }
    }
  }

  /** Lengths, bearings and turns where there is room for them. */
  private measures({ picture }: Scene, frame: Frame): void {
    if (picture.legs.length > 3000 && frame.resolution > 1) return;
    picture.legs.forEach((leg, i) => {
      const [a, b] = [picture.legStarts[i]!, picture.legStarts[i + 1]! - 1];
      const long = Math.hypot(picture.legPoints[2 * b]! - picture.legPoints[2 * a]!, picture.legPoints[2 * b + 1]! - picture.legPoints[2 * a + 1]!) / frame.resolution;
      if (long < 70) return;
      this.seen(frame, leg.east, leg.north, ([x, y]) => {
        const way = ((leg.azimuth - 90) * Math.PI) / 180;
        const [nx, ny] = [-Math.sin(way), Math.cos(way)]; // to the right of the line, on the screen
        const flip = Math.abs(way) > Math.PI / 2 + 1e-6 || way <= -Math.PI / 2 ? -1 : 1;
        const put = (text: string, off: number, size: number, bold: boolean, colour?: string) =>
          this.label(text, [x + nx * off * flip, y + ny * off * flip], way, frame, size, colour, bold);
        put(leg.length, -20, 13, true);
        if (long > 190) put(leg.bearing, 21, 11, false, this.ink.faint);
      });
    });
    if (frame.resolution > 0.4) return;
    for (const vertex of picture.vertices)
      if (vertex.turn)
        this.seen(frame, vertex.east, vertex.north, ([x, y]) => {
          const a = (vertex.inside * Math.PI) / 180;
          this.label(vertex.turn, [x + Math.sin(a) * 46, y - Math.cos(a) * 30], 0, frame, 11, this.ink.faint);
        });
  }

  /** Words where no other words stand yet. */
  private label(text: string, at: Point, angle: number, frame: Frame, size: number, colour?: string, bold = false): void {
    if (!text || at[0] < -60 || at[1] < -20 || at[0] > frame.width + 60 || at[1] > frame.height + 20) return;
    const half = text.length * size * 0.29;
    const [w, h] = [half * Math.abs(Math.cos(angle)) + (size / 2) * Math.abs(Math.sin(angle)), half * Math.abs(Math.sin(angle)) + (size / 2) * Math.abs(Math.cos(angle))];
    const box: [number, number, number, number] = [at[0] - w, at[1] - h, at[0] + w, at[1] + h];
    if (this.taken.some((t) => t[0] < box[2] && t[2] > box[0] && t[1] < box[3] && t[3] > box[1])) return;
    this.taken.push(box);
    symbols.words(this.pen, this.ink, text, at, { angle, size, bold, colour });
  }

  /** A ring around a post, vertex or pin that is pointed at, and the keyboard's place. */
  private pointed({ picture, selected, hovered, cursor }: Scene, frame: Frame): void {
    const { pen, ink } = this;
    for (const [target, radius, dash] of [[hovered, 11, [3, 3]], [selected, 13, []], [cursor, 17, [6, 3]]] as [Target, number, number[]][]) {
      const at = place(picture, target);
      if (!at || (target === hovered && same(hovered, selected))) continue;
      this.seen(frame, at[0], at[1], ([x, y]) => {
        pen.beginPath();
        pen.arc(x, y, radius, 0, 7);
        pen.setLineDash(dash);
        pen.lineWidth = 2.5;
        pen.strokeStyle = ink.accent;
        pen.stroke();
        pen.setLineDash([]);
      });
    }
  }

  private ghost(ghost: Ghost, frame: Frame): void {
    const { pen, ink } = this;
    const points = ghost.path.map(([e, n]) => pixel(frame, e, n));
    pen.strokeStyle = ink.accent;
    if (ghost.stretch && this.path(frame, ghost.stretch)) { pen.lineWidth = 14; pen.globalAlpha = 0.35; pen.stroke(); pen.globalAlpha = 1; }
    if (points.length > 1) {
      pen.lineWidth = 2;
      pen.setLineDash([8, 4]);
      symbols.polyline(pen, points);
      pen.stroke();
      pen.setLineDash([]);
      ghost.lengths.forEach((text, i) => {
        const [a, b] = [points[i], points[i + 1]];
        if (!a || !b || !text) return;
        const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
        const flip = Math.abs(angle) > Math.PI / 2 ? -1 : 1;
        symbols.words(pen, ink, text, [(a[0] + b[0]) / 2 + Math.sin(angle) * 14 * flip, (a[1] + b[1]) / 2 - Math.cos(angle) * 14 * flip], { angle, size: 13, bold: true, colour: ink.accent });
      });
    }
    for (const [x, y] of points.slice(0, -1)) { pen.beginPath(); pen.rect(x - 4, y - 4, 8, 8); pen.fillStyle = ink.paper; pen.fill(); pen.lineWidth = 2; pen.stroke(); }
    if (ghost.snap) {
      const [x, y] = pixel(frame, ghost.snap.at[0], ghost.snap.at[1]);
      pen.lineWidth = 2;
      symbols.polyline(pen, [[x - 9, y], [x, y - 9], [x + 9, y], [x, y + 9]], true);
      pen.stroke();
    }
    if (ghost.at) {
      const [x, y] = pixel(frame, ghost.at[0], ghost.at[1]);
      pen.lineWidth = 2;
      pen.beginPath();
      pen.arc(x, y, 6, 0, 7);
      pen.stroke();
      if (ghost.words) symbols.words(pen, ink, ghost.words, [x, y - 24], { size: 13, bold: true, colour: ink.accent });
    }
  }

  private margin({ picture }: Scene, frame: Frame): void {
    symbols.northArrow(this.pen, this.ink, [frame.width - 26, 46]);
    symbols.scaleBar(this.pen, this.ink, [16, frame.height - 16], frame.resolution, picture.metric);
  }
}

/** A note is told whole where it is selected; on the paper there is room for its head. */
function short(text: string): string { return text.length > 26 ? `${text.slice(0, 24).trimEnd()}…` : text; }

/** Where what is pointed at stands, where it is a place. */
export function place(picture: Picture, target: Target): Point | undefined {
  const line = picture.lines[target.line];
  if (target.kind === "post" && line) {
    const i = line.firstPost + target.index;
    return i < picture.postKinds.length ? [picture.postsAt[2 * i]!, picture.postsAt[2 * i + 1]!] : undefined;
  }
  if (target.kind === "vertex" && line) {
    const vertex = picture.vertices[line.firstVertex + target.index];
    return vertex ? [vertex.east, vertex.north] : undefined;
  }
  if (target.kind === "pin") {
    const pin = picture.pins.find((p) => p.id === target.id);
    return pin ? [pin.east, pin.north] : undefined;
  }
  return undefined;
}
