// What the hand does: draw a line, drag a corner or a thing, mark a stretch. Places, snaps, lengths and words come from the page; nothing is worked out here.
import { type Ghost, noGhost } from "./ghost";
import type { Picture, Point, Target } from "./picture";

export interface Snapped { east: number; north: number; kind: string; round: boolean; length: string; turn: string }
export interface Typed { ok: boolean; east: number; north: number; message: string }
export interface Along { found: boolean; east: number; north: number; words: string; path: number[] }

/** The page behind the drawing. Questions are answered at once; what changes the job is asked for and follows. */
export interface Desk {
  invokeMethod<T>(name: string, ...values: unknown[]): T;
  invokeMethodAsync<T>(name: string, ...values: unknown[]): Promise<T>;
}

/** Asks the page and gets its answer at once. */
function ask<T>(desk: Desk, name: string, ...values: unknown[]): T { return JSON.parse(desk.invokeMethod<string>(name, ...values)) as T; }

export function along(desk: Desk, at: Point, kind: string, id: string, part: string, start: Point): Along {
  return ask<Along>(desk, "Along", at[0], at[1], kind, id, part, start[0], start[1]);
}

export type Tool = "select" | "line" | "gate" | "obstacle" | "work" | "pin";

/** A line being drawn. */
export class Drawing {
  readonly points: Point[] = [];
  private readonly said: string[] = [];
  ghost: Ghost = noGhost;
  turn = "";
  length = "";
  private pointer?: Point;

  constructor(private readonly desk: Desk) {}

  private way(): [number, number] | undefined {
    const [a, b] = [this.points.at(-2), this.points.at(-1)];
    return a && b ? [b[0] - a[0], b[1] - a[1]] : undefined;
  }

  ask(at: Point, tolerance: number): Snapped {
    const [from, way] = [this.points.at(-1), this.way()];
    return ask<Snapped>(this.desk, "Snap", at[0], at[1], tolerance, from?.[0] ?? null, from?.[1] ?? null, way?.[0] ?? null, way?.[1] ?? null, "", this.points.flat());
  }

  move(at: Point, tolerance: number): Point {
    const snapped = this.ask(at, tolerance);
    const point: Point = [snapped.east, snapped.north];
    this.pointer = point;
    [this.length, this.turn] = [snapped.length, snapped.turn];
    this.ghost = {
      path: [...this.points, point], lengths: [...this.said, this.points.length ? [snapped.length, snapped.turn].filter(Boolean).join("  ") : ""],
      snap: snapped.kind ? { kind: snapped.kind, at: point, round: snapped.round } : undefined,
      at: point,
    };
    return point;
  }

  add(point: Point): void {
    if (this.points.length) this.said.push(this.length);
    this.points.push(point);
    this.ghost = { path: [...this.points], lengths: [...this.said] };
  }

  /** Goes on by a typed length and angle; without one of them the pointer's. */
  type(length: string, angle: string): string {
    const from = this.points.at(-1);
    const way = this.way();
    const to = this.pointer ?? from;
    const typed = ask<Typed>(this.desk, "Typed", length, angle, from?.[0] ?? 0, from?.[1] ?? 0, way?.[0] ?? null, way?.[1] ?? null, to?.[0] ?? null, to?.[1] ?? null);
    if (!typed.ok) return typed.message;
    if (!from) this.points.push([0, 0]);
    const at: Point = [typed.east, typed.north];
    this.move(at, 0);
    this.add(at);
    return "";
  }

  back(): void {
    this.points.pop();
    this.said.pop();
    this.ghost = { path: [...this.points], lengths: [...this.said] };
  }

  /** True where the pointer is back at the first point. */
  closes(point: Point, tolerance: number): boolean {
    const first = this.points[0];
    return this.points.length > 2 && !!first && Math.hypot(first[0] - point[0], first[1] - point[1]) <= tolerance;
  }
}

/** A corner or a thing that is dragged. */
export class Drag {
  ghost: Ghost = noGhost;
  moved = false;
  at: Point;
  private asked = 0;

  constructor(private readonly desk: Desk, readonly target: Target, private readonly picture: Picture, readonly start: Point) { this.at = start; }

  private neighbours(): Point[] {
    const line = this.picture.lines[this.target.line];
    if (!line) return [];
    const at = (i: number): Point => { const v = this.picture.vertices[line.firstVertex + i]!; return [v.east, v.north]; };
    const i = this.target.index;
    if (this.target.kind === "leg") return [at(i), at((i + 1) % line.vertices)];
    const [before, after] = [i > 0 ? i - 1 : line.closed ? line.vertices - 1 : -1, i < line.vertices - 1 ? i + 1 : line.closed ? 0 : -1];
    return [before, after].filter((n) => n >= 0).map(at);
  }

  get isCorner(): boolean { return this.target.kind === "vertex" || (this.target.kind === "leg" && this.target.part === "middle"); }

  move(at: Point, tolerance: number): void {
    this.moved = true;
    if (this.isCorner) this.corner(at, tolerance);
    else this.thing(at);
    const now = performance.now();
    if (now - this.asked < 150 || !this.isCorner) return;
    this.asked = now;
    void this.desk.invokeMethodAsync("Dragging", this.target.kind, this.target.line, this.target.index, this.target.id, this.at[0], this.at[1]);
  }

  private corner(at: Point, tolerance: number): void {
    const beside = this.neighbours();
    const [from] = beside;
    const snapped = ask<Snapped>(this.desk, "Snap", at[0], at[1], tolerance, from?.[0] ?? null, from?.[1] ?? null, null, null, this.target.kind === "vertex" ? this.target.id : "", []);
    this.at = [snapped.east, snapped.north];
    const lengths = ask<string[]>(this.desk, "Lengths", [...(beside[0] ?? this.at), ...this.at, ...(beside[1] ?? this.at)]);
    const path: Point[] = beside[0] ? [beside[0], this.at] : [this.at];
    if (beside[1]) path.push(beside[1]);
    this.ghost = {
      path, lengths: beside[0] ? lengths : lengths.slice(1), at: this.at,
      snap: snapped.kind ? { kind: snapped.kind, at: this.at, round: snapped.round } : undefined,
    };
  }

  private thing(at: Point): void {
    const to = along(this.desk, at, this.target.kind, this.target.id, this.target.part ?? "", this.start);
    if (!to.found) return;
    this.at = at;
    this.ghost = { path: [], lengths: [], at: [to.east, to.north], words: to.words, stretch: to.path };
  }

  drop(): Promise<unknown> {
    return this.desk.invokeMethodAsync("Dropped", this.target.kind, this.target.line, this.target.index, this.target.id, this.target.part ?? "", this.at[0], this.at[1], this.start[0], this.start[1]);
  }
}
