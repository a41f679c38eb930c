// The plan view on OpenLayers. A module of its own: it is loaded when the first plan is drawn.
import Map from "ol/Map";
import type MapBrowserEvent from "ol/MapBrowserEvent";
import View from "ol/View";
import type { FrameState } from "ol/Map";
import { defaults } from "ol/interaction/defaults";
import DoubleClickZoom from "ol/interaction/DoubleClickZoom";
import PointerInteraction from "ol/interaction/Pointer";
import Layer from "ol/layer/Layer";
import Projection from "ol/proj/Projection";
import { noGhost } from "./plan/ghost";
import { hit } from "./plan/hits";
import { type Ink, inkOf, onTheme } from "./plan/ink";
import { Painter, place } from "./plan/paint";
import { empty, nothing, type Picture, type Point, same, type Target, unpack } from "./plan/picture";
import { along, type Desk, Drag, Drawing, type Tool } from "./plan/tools";
import { Underlay } from "./plan/underlay";
import type { Frame } from "./plan/view";

/** Metres on the ground, as the job has them. */
const site = new Projection({ code: "SITE", units: "m", extent: [-2e6, -2e6, 2e6, 2e6] });
const snapPixels = 12;

class PlanMap {
  private picture: Picture = empty;
  private selected = nothing;
  private hovered = nothing;
  private cursor = nothing;
  private tool: Tool = "select";
  private hang = false;
  private readOnly = false;
  private drawing?: Drawing;
  private drag?: Drag;
  private marking?: Point;
  private fitting?: Point[];
  private ink: Ink;
  private fitted = false;
  private waiting = 0;
  /** When the hand last did something here: the paper then stays where it is. */
  private touched = 0;
  /** The last two. */
  private clicks: { pixel: Point; tool: Tool }[] = [];
  private pointer?: { at: Point; coarse: boolean };
  private readonly canvas = document.createElement("canvas");
  private readonly map: Map;
  private readonly zoom = new DoubleClickZoom();
  private readonly off: (() => void)[] = [];
  readonly underlay: Underlay;

  constructor(private readonly element: HTMLElement, private readonly desk: Desk) {
    this.ink = inkOf(element);
    this.canvas.className = "plan-canvas";
    this.canvas.style.position = "absolute";
    const layer = new Layer({ render: (state) => this.render(state) });
    const dragger = new PointerInteraction({
      handleDownEvent: (event) => this.down(event), handleDragEvent: (event) => this.dragged(event), handleUpEvent: () => this.up(),
    });
    this.map = new Map({
      controls: [], layers: [layer], keyboardEventTarget: undefined,
      interactions: defaults({ altShiftDragRotate: false, pinchRotate: false, doubleClickZoom: false, keyboard: false }).extend([this.zoom, dragger]),
      view: new View({ projection: site, center: [0, 0], resolution: 0.15, minResolution: 0.002, maxResolution: 2000, enableRotation: false, constrainOnlyCenter: true, smoothResolutionConstraint: false }),
      moveTolerance: 4,
    });
    this.underlay = new Underlay(this.map, site);
    this.map.on("pointermove", (event) => this.moved(event as MapBrowserEvent<PointerEvent>));
    this.map.on("click", (event) => this.clicked(event as MapBrowserEvent<PointerEvent>));
    this.map.on("dblclick", (event) => {
      if (this.drawing) { event.stopPropagation(); void this.finish(false); }
      else if (!this.nearer(event.pixel as Point)) event.stopPropagation();
    });
    element.addEventListener("keydown", this.key);
    element.addEventListener("pointerleave", this.left);
    this.off.push(onTheme(() => { this.ink = inkOf(element); this.redraw(); }));
  }

  show(json: Uint8Array, legPoints: Uint8Array, legStarts: Uint8Array, postsAt: Uint8Array, postKinds: Uint8Array, runs: Uint8Array, bays: Uint8Array, hang: boolean, readOnly: boolean): void {
    this.picture = unpack(json, legPoints, legStarts, postsAt, postKinds, runs, bays);
    [this.hang, this.readOnly] = [hang, readOnly];
    if (!this.fitted && this.picture.legs.length) this.fit();
    this.redraw();
    this.element.dataset.posts = String(this.picture.postKinds.length);
  }

  point(kind: string, line: number, index: number, id: string, overKind: string, overLine: number, overIndex: number, overId: string): void {
    const [selected, hovered]: Target[] = [{ kind, line, index, id }, { kind: overKind, line: overLine, index: overIndex, id: overId }] as [Target, Target];
    const news = !same(selected!, this.selected);
    [this.selected, this.hovered] = [selected!, hovered!];
    if (news && kind !== "none" && performance.now() - this.touched > 1500) this.reveal(selected!);
    this.redraw();
  }

  use(tool: Tool): void {
    this.stop();
    this.tool = tool;
    if (tool === "line") { this.drawing = new Drawing(this.desk); this.say(); }
    this.zoom.setActive(tool !== "line");
    this.element.classList.toggle("aims", tool !== "select");
    this.redraw();
  }

  /** Shows everything. */
  fit(): void {
    const [west, south, east, north] = this.picture.extent as [number, number, number, number];
    const size = this.map.getSize();
    if (!size || !size[0] || !size[1]) return;
    this.fitted = this.picture.legs.length > 0;
    const least = this.fitted ? 3 : 60;
    this.showBox(west, south, east, north, least, size as [number, number]);
  }

  private showBox(west: number, south: number, east: number, north: number, least: number, size: [number, number]): void {
    const [wide, high] = [Math.max(least, east - west), Math.max(least, north - south)];
    this.map.getView().setCenter([(west + east) / 2, (south + north) / 2]);
    this.map.getView().setResolution(Math.max(wide / Math.max(60, size[0] - 130), high / Math.max(60, size[1] - 130)));
  }

  /** Shows the whole line being drawn where its last point lies outside. */
  private showDrawn(points: Point[]): void {
    const [frame, last, size] = [this.frame(), points.at(-1), this.map.getSize()];
    if (!last || !size) return;
    if (Math.abs(last[0] - frame.east) < (frame.width / 2 - 40) * frame.resolution && Math.abs(last[1] - frame.north) < (frame.height / 2 - 40) * frame.resolution) return;
    const [east, north] = [points.map((p) => p[0]), points.map((p) => p[1])];
    this.showBox(Math.min(...east), Math.min(...north), Math.max(...east), Math.max(...north), 3, size as [number, number]);
  }

  forget(): void { this.fitted = false; }

  zoomBy(factor: number): void {
    const view = this.map.getView();
    view.setResolution((view.getResolution() ?? 1) * factor);
  }

  /** The typed length and angle of the next leg; says what was wrong with them, or nothing. */
  type(length: string, angle: string): string {
    if (!this.drawing) return "";
    const wrong = this.drawing.type(length, angle);
    this.redraw();
    if (!wrong) { this.say(); this.showDrawn(this.drawing.points); }
    return wrong;
  }

  async finish(closed: boolean): Promise<void> {
    const points = this.drawing?.points ?? [];
    if (!this.drawing || points.length < 2) { this.use("select"); await this.desk.invokeMethodAsync("Stopped"); return; }
    this.stop();
    this.tool = "select";
    await this.desk.invokeMethodAsync("Drawn", points.flat(), closed);
  }

  cancel(): void { this.use(this.tool === "line" ? "line" : "select"); }

  focus(): void { this.element.focus({ preventScroll: true }); }

  /** The map is hung up once there is room for it: on a telephone it may begin behind the profile. */
  resize(): void {
    if (!this.element.clientWidth || !this.element.clientHeight) return;
    if (this.map.getTarget() !== this.element) this.map.setTarget(this.element);
    this.map.updateSize();
    if (!this.fitted) this.fit();
  }

  dispose(): void {
    this.off.forEach((end) => end());
    this.element.removeEventListener("keydown", this.key);
    this.element.removeEventListener("pointerleave", this.left);
    this.underlay.dispose();
    this.map.setTarget(undefined);
    this.map.dispose();
  }

  loadUnderlay(job: string): Promise<string> { return this.underlay.load(job); }
  layImage(job: string, name: string, bytes: Uint8Array, kind: string, world: number[] | null): Promise<string> { return this.underlay.image(job, name, bytes, kind, world); }
  layTiles(job: string, address: string, figures: number[]): Promise<void> { return this.underlay.tiles(job, address, figures); }
  fadeUnderlay(part: number): Promise<void> { return this.underlay.fade(part); }
  removeUnderlay(job: string): Promise<void> { return this.underlay.remove(job); }

  /** The next two clicks are two points of the picture; the distance between them is typed then. */
  fitUnderlay(): void {
    this.use("select");
    this.fitting = [];
    this.element.classList.add("aims");
  }

  /** The distance between the two points, in metres: the picture is made so large. */
  async scaleUnderlay(metres: number): Promise<boolean> {
    const [a, b] = this.fitting ?? [];
    this.fitting = undefined;
    this.element.classList.remove("aims");
    if (!a || !b || !(metres > 0)) return false;
    const now = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return this.underlay.fit([...a, ...b], [...a, a[0] + ((b[0] - a[0]) * metres) / now, a[1] + ((b[1] - a[1]) * metres) / now]);
  }

  private stop(): void {
    [this.drawing, this.drag, this.marking, this.markingGhost, this.fitting] = [undefined, undefined, undefined, undefined, undefined];
  }

  private redraw(): void { this.map.render(); }

  private get reach(): number { return (this.map.getView().getResolution() ?? 1) * (this.pointer?.coarse ? 20 : 10); }

  private get snap(): number { return (this.map.getView().getResolution() ?? 1) * snapPixels; }

  private frame(): Frame {
    const [size, view] = [this.map.getSize() ?? [1, 1], this.map.getView()];
    const centre = view.getCenter() ?? [0, 0];
    return { width: size[0]!, height: size[1]!, east: centre[0]!, north: centre[1]!, resolution: view.getResolution() ?? 1 };
  }

  private render(state: FrameState): HTMLElement {
    const [width, height] = state.size as [number, number];
    const ratio = state.pixelRatio;
    if (this.canvas.width !== Math.round(width * ratio) || this.canvas.height !== Math.round(height * ratio)) {
      [this.canvas.width, this.canvas.height] = [Math.round(width * ratio), Math.round(height * ratio)];
      [this.canvas.style.width, this.canvas.style.height] = [`${width}px`, `${height}px`];
    }
    const pen = this.canvas.getContext("2d")!;
    pen.clearRect(0, 0, this.canvas.width, this.canvas.height);
    const [east, north] = state.viewState.center as [number, number];
    const started = performance.now();
    new Painter(pen, this.ink, ratio).paint(
      {
        picture: this.picture, selected: this.selected, hovered: this.hovered, ghost: this.drag?.ghost ?? this.drawing?.ghost ?? this.markingGhost ?? noGhost,
        hang: this.hang, editing: this.tool === "select" && !this.readOnly, cursor: document.activeElement === this.element ? this.cursor : nothing,
      },
      { width, height, east, north, resolution: state.viewState.resolution });
    this.element.dataset.view = `${east} ${north} ${state.viewState.resolution}`;
    this.element.dataset.painted = (performance.now() - started).toFixed(1);
    return this.canvas;
  }

  private markingGhost?: { path: Point[]; lengths: string[]; at?: Point; words?: string; stretch?: number[] };

  private at(event: MapBrowserEvent<PointerEvent>): Point {
    this.touched = performance.now();
    this.pointer = { at: event.coordinate as Point, coarse: event.originalEvent.pointerType === "touch" };
    return event.coordinate as Point;
  }

  private under(at: Point): Target { return hit(this.picture, at, this.reach, this.frame(), this.tool === "select" && !this.readOnly, this.selected); }

  private moved(event: MapBrowserEvent<PointerEvent>): void {
    if (event.dragging && !this.drag) return;
    const at = this.at(event);
    if (this.waiting) return;
    this.waiting = requestAnimationFrame(() => {
      this.waiting = 0;
      this.follow(this.pointer?.at ?? at);
    });
  }

  private follow(at: Point): void {
    if (this.drag) return;
    if (this.drawing) { this.drawing.move(at, this.snap); this.say(); this.redraw(); return; }
    if (this.tool !== "select") { this.aim(at); return; }
    const found = this.under(at);
    this.element.style.cursor = found.kind === "none" ? "" : this.draggable(found) ? "grab" : "pointer";
    if (same(found, this.hovered)) return;
    this.hovered = found;
    this.redraw();
    void this.desk.invokeMethodAsync("Hovered", found.kind, found.line, found.index, found.id);
  }

  /** Shows where a thing would come to stand. */
  private aim(at: Point): void {
    const from = this.marking;
    const to = along(this.desk, at, this.tool, "", from ? "mark" : "", from ?? at);
    this.markingGhost = to.found ? { path: [], lengths: [], at: [to.east, to.north], words: to.words, stretch: to.path } : undefined;
    this.redraw();
  }

  private draggable(target: Target): boolean {
    return !this.readOnly && (["vertex", "gate", "pin"].includes(target.kind) || target.part !== undefined || (["obstacle", "work"].includes(target.kind) && target.id === this.selected.id));
  }

  private down(event: MapBrowserEvent): boolean {
    const pointer = event as MapBrowserEvent<PointerEvent>;
    if (this.readOnly || this.drawing || pointer.originalEvent.button > 0) return false;
    const at = this.at(pointer);
    if (this.tool === "obstacle" || this.tool === "work") { this.marking = at; return true; }
    if (this.tool !== "select") return false;
    const found = this.under(at);
    if (!this.draggable(found)) return false;
    this.drag = new Drag(this.desk, found, this.picture, at);
    return true;
  }

  private dragged(event: MapBrowserEvent): void {
    const at = this.at(event as MapBrowserEvent<PointerEvent>);
    if (this.marking) { this.aim(at); return; }
    this.element.style.cursor = "grabbing";
    this.drag?.move(at, this.snap);
    this.redraw();
  }

  private up(): boolean {
    const [drag, marking] = [this.drag, this.marking];
    [this.drag, this.marking, this.markingGhost] = [undefined, undefined, undefined];
    this.element.style.cursor = "";
    if (marking && this.pointer) void this.desk.invokeMethodAsync("Marked", this.tool, marking[0], marking[1], this.pointer.at[0], this.pointer.at[1]);
    else if (drag?.moved) void drag.drop();
    else if (drag) void this.desk.invokeMethodAsync("Picked", drag.target.kind, drag.target.line, drag.target.index, drag.target.id, drag.start[0], drag.start[1]);
    this.redraw();
    return false;
  }

  /** Two places clicked in quick succession are two places: only two clicks on one, with nothing in hand, are a wish to come nearer. */
  private nearer(pixel: Point): boolean {
    return this.clicks.every((click) => click.tool === "select" && Math.hypot(click.pixel[0] - pixel[0], click.pixel[1] - pixel[1]) < 8);
  }

  private clicked(event: MapBrowserEvent<PointerEvent>): void {
    this.clicks = [...this.clicks.slice(-1), { pixel: event.pixel as Point, tool: this.tool }];
    const at = this.at(event);
    this.focus();
    if (this.fitting) { this.fitPoint(at); return; }
    if (this.drawing) { this.addPoint(at); return; }
    if (this.tool === "gate" || this.tool === "pin") { void this.desk.invokeMethodAsync("Placed", this.tool, at[0], at[1]); return; }
    if (this.tool !== "select") return;
    const found = this.under(at);
    if (this.draggable(found)) return; // picked when the button came up
    this.cursor = found.kind === "post" || found.kind === "vertex" ? found : this.cursor;
    void this.desk.invokeMethodAsync("Picked", found.kind, found.line, found.index, found.id, at[0], at[1]);
  }

  private fitPoint(at: Point): void {
    this.fitting!.push(at);
    this.markingGhost = { path: [...this.fitting!], lengths: [], at };
    this.redraw();
    if (this.fitting!.length === 2) void this.desk.invokeMethodAsync("FitPointsTaken");
  }

  private addPoint(at: Point): void {
    const drawing = this.drawing!;
    const point = drawing.move(at, this.snap);
    if (drawing.closes(point, this.snap)) { void this.finish(true); return; }
    drawing.add(point);
    this.say();
    this.redraw();
  }

  /** Length and turn of the stretch under the pointer, beside the fields they can be typed in. */
  private say(): void {
    const box = this.element.parentElement?.querySelector<HTMLElement>("[data-live]");
    if (box) box.textContent = [this.drawing?.length, this.drawing?.turn].filter(Boolean).join("   ");
  }

  private readonly left = (): void => {
    if (this.hovered.kind === "none" || this.drag) return;
    this.hovered = nothing;
    this.redraw();
    void this.desk.invokeMethodAsync("Hovered", "none", -1, -1, "");
  };

  private readonly key = (event: KeyboardEvent): void => {
    if (event.target !== this.element || event.ctrlKey || event.metaKey) return;
    if (this.drawing && /^[0-9.]$/.test(event.key)) { this.toField(event); return; }
    const done = this.pressed(event);
    if (done) { event.preventDefault(); event.stopPropagation(); }
  };

  /** A figure typed over the drawing goes into the field for the length. */
  private toField(event: KeyboardEvent): void {
    const field = this.element.parentElement?.querySelector<HTMLInputElement>("[data-length]");
    if (!field) return;
    event.preventDefault();
    field.value = event.key;
    field.focus();
    field.setSelectionRange(1, 1);
  }

  private pressed(event: KeyboardEvent): boolean {
    switch (event.key) {
      case "ArrowRight": case "ArrowLeft": return event.altKey ? this.nudge(event.key) : this.step(event.key === "ArrowRight" ? 1 : -1);
      case "ArrowUp": case "ArrowDown": return event.altKey ? this.nudge(event.key) : this.stepLine(event.key === "ArrowDown" ? 1 : -1);
      case "v": case "V": return this.swap();
      case "Enter":
        if (this.drawing) { void this.finish(false); return true; }
        if (this.cursor.kind === "none") return false;
        void this.desk.invokeMethodAsync("Picked", this.cursor.kind, this.cursor.line, this.cursor.index, this.cursor.id, 0, 0);
        return true;
      case "Delete": case "Backspace":
        if (this.drawing) { this.drawing.back(); this.redraw(); return true; }
        if (this.readOnly) return false;
        void this.desk.invokeMethodAsync("Deleted");
        return true;
      case "Escape":
        if (this.tool === "select") return false;
        this.use("select");
        void this.desk.invokeMethodAsync("Stopped");
        return true;
      case "+": case "=": this.zoomBy(0.7); return true;
      case "-": this.zoomBy(1 / 0.7); return true;
      case "0": this.fit(); return true;
      default: return false;
    }
  }

  private count(line: number, kind: string): number {
    const part = this.picture.lines[line];
    return part ? (kind === "vertex" ? part.vertices : part.posts || part.vertices) : 0;
  }

  private goTo(kind: string, line: number, index: number): boolean {
    const part = this.picture.lines[line];
    if (!part) return false;
    const real = part.posts ? kind : "vertex";
    const id = real === "vertex" ? this.picture.vertices[part.firstVertex + index]?.id ?? "" : "";
    this.cursor = { kind: real, line, index, id };
    const at = place(this.picture, this.cursor);
    if (at) this.bring(at);
    this.redraw();
    void this.desk.invokeMethodAsync("Hovered", real, line, index, id);
    return true;
  }

  private step(by: number): boolean {
    if (this.cursor.kind === "none") return this.goTo("post", 0, 0);
    const count = this.count(this.cursor.line, this.cursor.kind);
    return count > 0 && this.goTo(this.cursor.kind, this.cursor.line, (this.cursor.index + by + count) % count);
  }

  private stepLine(by: number): boolean {
    const count = this.picture.lines.length;
    return count > 0 && this.goTo(this.cursor.kind === "none" ? "post" : this.cursor.kind, (Math.max(0, this.cursor.line) + by + count) % count, 0);
  }

  private swap(): boolean { return this.goTo(this.cursor.kind === "vertex" ? "post" : "vertex", Math.max(0, this.cursor.line), 0); }

  /** Moves the selected corner by a foot or ten centimetres. */
  private nudge(key: string): boolean {
    const by = this.picture.metric ? 0.1 : 0.3048;
    const [east, north] = { ArrowRight: [by, 0], ArrowLeft: [-by, 0], ArrowUp: [0, by], ArrowDown: [0, -by] }[key] as [number, number];
    if (this.selected.kind !== "vertex" || this.readOnly) return false;
    void this.desk.invokeMethodAsync("Nudged", east, north);
    return true;
  }

  private reveal(target: Target): void {
    const at = place(this.picture, target);
    if (at) this.bring(at);
  }

  /** Moves the paper only where a place lies outside it. */
  private bring([east, north]: Point): void {
    const frame = this.frame();
    const [x, y] = [(east - frame.east) / frame.resolution, (north - frame.north) / frame.resolution];
    if (Math.abs(x) > frame.width / 2 - 30 || Math.abs(y) > frame.height / 2 - 30) this.map.getView().setCenter([east, north]);
  }
}

export function create(element: HTMLElement, desk: Desk): PlanMap {
  const made = new PlanMap(element, desk);
  const watch = new ResizeObserver(() => made.resize());
  watch.observe(element);
  return made;
}
