// The symbols of the drawing. Each is told by its shape; colour only helps.
import type { Ink } from "./ink";
import { type Point, Post } from "./picture";

type Pen = CanvasRenderingContext2D;

export function polyline(pen: Pen, points: Point[], close = false): void {
  pen.beginPath();
  points.forEach(([x, y], i) => (i === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
  if (close) pen.closePath();
}

/** Words with a rim of paper, so that they can be read over lines. */
export function words(pen: Pen, ink: Ink, text: string, [x, y]: Point, options: { angle?: number; align?: CanvasTextAlign; size?: number; bold?: boolean; colour?: string } = {}): void {
  pen.save();
  pen.translate(x, y);
  let angle = options.angle ?? 0;
  if (angle > Math.PI / 2) angle -= Math.PI; // never upside down
  if (angle <= -Math.PI / 2) angle += Math.PI;
  pen.rotate(angle);
  pen.font = `${options.bold ? "600 " : ""}${options.size ?? 12}px ${ink.font}`;
  pen.textAlign = options.align ?? "center";
  pen.textBaseline = "middle";
  pen.lineJoin = "round";
  pen.lineWidth = 4;
  pen.strokeStyle = ink.paper;
  pen.strokeText(text, 0, 0);
  pen.fillStyle = options.colour ?? ink.ink;
  pen.fillText(text, 0, 0);
  pen.restore();
}

export function post(pen: Pen, ink: Ink, kind: number, [x, y]: Point, size: number): void {
  pen.lineWidth = ink.pen * 1.3;
  pen.strokeStyle = ink.ink;
  pen.fillStyle = ink.ink;
  pen.beginPath();
  switch (kind) {
    case Post.line: pen.arc(x, y, size * 0.55, 0, 7); pen.fill(); return;
    case Post.end: pen.rect(x - size, y - size, 2 * size, 2 * size); pen.fill(); return;
    case Post.corner:
      pen.rect(x - size, y - size, 2 * size, 2 * size);
      pen.fillStyle = ink.paper; pen.fill(); pen.stroke();
      polyline(pen, [[x - size, y - size], [x + size, y + size]]); pen.stroke();
      polyline(pen, [[x + size, y - size], [x - size, y + size]]); pen.stroke();
      return;
    case Post.gate: pen.arc(x, y, size, 0, 7); pen.fillStyle = ink.paper; pen.fill(); pen.stroke(); pen.beginPath(); pen.arc(x, y, size * 0.4, 0, 7); pen.fillStyle = ink.ink; pen.fill(); return;
    case Post.pull: polyline(pen, [[x, y - size * 1.3], [x + size * 1.3, y], [x, y + size * 1.3], [x - size * 1.3, y]], true); pen.fillStyle = ink.paper; pen.fill(); pen.stroke(); return;
    case Post.gradeBreak: polyline(pen, [[x, y - size * 1.3], [x + size * 1.2, y + size], [x - size * 1.2, y + size]], true); pen.fillStyle = ink.paper; pen.fill(); pen.stroke(); return;
    case Post.change:
      pen.rect(x - size, y - size, 2 * size, 2 * size); pen.fillStyle = ink.paper; pen.fill(); pen.stroke();
      pen.beginPath(); pen.rect(x - size, y - size, size, 2 * size); pen.fillStyle = ink.ink; pen.fill(); return;
    default:
      pen.rect(x - size, y - size, 2 * size, 2 * size); pen.fillStyle = ink.paper; pen.fill(); pen.setLineDash([2, 2]); pen.stroke(); pen.setLineDash([]); return;
  }
}

/** A small tile of hatching, one for each kind of ground. */
export function hatch(pen: Pen, ink: Ink, kind: string, ratio: number): CanvasPattern | string {
  const size = kind === "no-dig" || kind === "clearing" ? 8 : 12;
  const tile = document.createElement("canvas");
  tile.width = tile.height = Math.round(size * ratio);
  const draw = tile.getContext("2d")!;
  draw.scale(tile.width / size, tile.height / size);
  draw.strokeStyle = draw.fillStyle = kind === "no-dig" ? ink.error : ink.faint;
  draw.lineWidth = ink.pen;
  const line = (...at: number[]) => { draw.beginPath(); for (let i = 0; i < at.length; i += 2) (i === 0 ? draw.moveTo(at[0]!, at[1]!) : draw.lineTo(at[i]!, at[i + 1]!)); draw.stroke(); };
  switch (kind) {
    case "no-dig": line(0, 8, 8, 0); line(-2, 2, 2, -2); line(6, 10, 10, 6); line(0, 0, 8, 8); break;
    case "slab": for (const [x, y] of [[2, 3], [8, 2], [5, 7], [10, 9], [1, 10]]) { draw.beginPath(); draw.arc(x!, y!, 0.9, 0, 7); draw.fill(); } break;
    case "rock": line(1, 9, 4, 4, 7, 9); line(7, 6, 9, 2, 12, 6); break;
    case "wall": line(0, 2, 12, 2); line(0, 8, 12, 8); line(3, 2, 3, 8); line(9, 8, 9, 14); line(9, -4, 9, 2); break;
    case "wet": line(0, 3, 3, 1, 6, 3, 9, 1, 12, 3); line(0, 9, 3, 7, 6, 9, 9, 7, 12, 9); break;
    case "swale": case "culvert": line(0, 2, 6, 9, 12, 2); break;
    case "removal": line(2, 2, 7, 7); line(7, 2, 2, 7); break;
    case "clearing": line(0, 8, 8, 0); break;
    case "cut": line(6, 0, 6, 12); break;
    case "fill": line(0, 6, 12, 6); break;
    default: line(0, 6, 12, 6);
  }
  return pen.createPattern(tile, "repeat") ?? ink.line;
}

export function tree(pen: Pen, ink: Ink, [x, y]: Point, radius: number): void {
  pen.strokeStyle = ink.faint;
  pen.lineWidth = ink.pen;
  pen.beginPath();
  for (let i = 0; i < 8; i++) {
    const a = (i * Math.PI) / 4;
    pen.moveTo(x + radius * Math.cos(a + 0.5), y + radius * Math.sin(a + 0.5));
    pen.arc(x + radius * 0.75 * Math.cos(a), y + radius * 0.75 * Math.sin(a), radius * 0.42, a + 1.2, a - 1.2, true);
  }
  pen.stroke();
  pen.beginPath();
  pen.arc(x, y, 2.5, 0, 7);
  pen.fillStyle = ink.faint;
  pen.fill();
}

/** An error stands in a triangle, a question and a warning in a circle, each with its sign. */
export function problem(pen: Pen, ink: Ink, severity: number, [x, y]: Point): void {
  const colour = severity === 3 ? ink.error : ink.warning;
  const top: Point = [x, y - 22];
  pen.lineWidth = ink.pen;
  pen.strokeStyle = colour;
  polyline(pen, [[x, y - 4], [x, y - 13]]);
  pen.stroke();
  pen.lineWidth = 2;
  pen.fillStyle = ink.paper;
  if (severity === 3) polyline(pen, [[x, top[1] - 9], [x + 10, top[1] + 8], [x - 10, top[1] + 8]], true);
  else { pen.beginPath(); pen.arc(x, top[1], 9, 0, 7); }
  pen.fill();
  pen.stroke();
  pen.font = `700 12px ${ink.font}`;
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  pen.fillStyle = colour;
  pen.fillText(severity === 1 ? "?" : "!", x, top[1] + (severity === 3 ? 2 : 0.5));
}

export function pin(pen: Pen, ink: Ink, [x, y]: Point, stands: boolean): void {
  polyline(pen, [[x, y - 4], [x - 6, y - 15], [x + 6, y - 15]], true);
  pen.lineWidth = ink.pen * 1.3;
  pen.strokeStyle = ink.ink;
  pen.fillStyle = stands ? ink.ink : ink.paper;
  pen.fill();
  pen.stroke();
}

export function northArrow(pen: Pen, ink: Ink, [x, y]: Point): void {
  polyline(pen, [[x, y - 22], [x + 8, y + 10], [x, y + 4]], true);
  pen.fillStyle = ink.ink;
  pen.fill();
  polyline(pen, [[x, y - 22], [x - 8, y + 10], [x, y + 4]], true);
  pen.lineWidth = ink.pen;
  pen.strokeStyle = ink.ink;
  pen.stroke();
  words(pen, ink, "N", [x, y - 31], { bold: true, size: 13 });
}

/** A bar of a round length in feet or metres, at most so many pixels long. */
export function scaleBar(pen: Pen, ink: Ink, [x, y]: Point, resolution: number, metric: boolean): void {
  const unit = metric ? 1 : 0.3048;
  const room = (120 * resolution) / unit;
  const ten = 10 ** Math.floor(Math.log10(room));
  const round = room >= 5 * ten ? 5 * ten : room >= 2 * ten ? 2 * ten : ten;
  const length = (round * unit) / resolution;
  pen.lineWidth = ink.pen;
  pen.strokeStyle = ink.ink;
  for (let i = 0; i < 4; i++) {
    pen.beginPath();
    pen.rect(x + (i * length) / 4, y, length / 4, 5);
    pen.fillStyle = i % 2 ? ink.paper : ink.ink;
    pen.fill();
    pen.stroke();
  }
  const shown = round >= 1 ? String(round) : round.toPrecision(1);
  words(pen, ink, "0", [x, y - 9], { size: 11 });
  words(pen, ink, `${shown} ${metric ? "m" : "ft"}`, [x + length, y - 9], { size: 11 });
}
