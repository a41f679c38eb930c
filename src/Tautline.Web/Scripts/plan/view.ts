// From metres on the site to pixels on the screen; north is up.
import type { Point } from "./picture";

export interface Frame { width: number; height: number; east: number; north: number; resolution: number }

export function pixel(frame: Frame, east: number, north: number): Point {
  return [(east - frame.east) / frame.resolution + frame.width / 2, (frame.north - north) / frame.resolution + frame.height / 2];
}

export function far(a: Point, b: Point): number { return Math.hypot(a[0] - b[0], a[1] - b[1]); }

/** Distance of a point from a path given as east, north, east, north... */
export function fromPath(path: ArrayLike<number>, at: Point, first = 0, last = path.length / 2 - 1): number {
  let best = Infinity;
  for (let i = first; i < last; i++) best = Math.min(best, fromSegment(at, path[2 * i]!, path[2 * i + 1]!, path[2 * i + 2]!, path[2 * i + 3]!));
  return best;
}

export function fromSegment([x, y]: Point, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const part = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square));
  return Math.hypot(x - ax - part * dx, y - ay - part * dy);
}

/** The middle of a path by length, and the way it runs there in screen radians. */
export function middle(path: ArrayLike<number>): { at: Point; angle: number } {
  let total = 0;
  for (let i = 2; i < path.length; i += 2) total += Math.hypot(path[i]! - path[i - 2]!, path[i + 1]! - path[i - 1]!);
  let left = total / 2;
  for (let i = 2; i < path.length; i += 2) {
    const [dx, dy] = [path[i]! - path[i - 2]!, path[i + 1]! - path[i - 1]!];
    const length = Math.hypot(dx, dy);
    if (length >= left || i === path.length - 2) {
      const part = length === 0 ? 0 : left / length;
      return { at: [path[i - 2]! + part * dx, path[i - 1]! + part * dy], angle: Math.atan2(-dy, dx) };
    }
    left -= length;
  }
  return { at: [path[0] ?? 0, path[1] ?? 0], angle: 0 };
}
