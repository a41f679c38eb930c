// The profile under the hand: zoom, pan, point. The drawing comes as text from the page; nothing is worked out here.
interface Desk { invokeMethodAsync(name: string, ...values: unknown[]): Promise<unknown> }

class Profile {
  private hovered = "";
  private grabbed?: { x: number; id: number; moved: boolean };
  private pan = 0;
  private busy = false;
  private zoom?: { factor: number; x: number };
  private readonly watch: ResizeObserver;

  constructor(private readonly element: HTMLElement, private readonly desk: Desk) {
    element.addEventListener("wheel", this.wheel, { passive: false });
    element.addEventListener("pointerdown", this.down);
    element.addEventListener("pointermove", this.move);
    element.addEventListener("pointerup", this.up);
    element.addEventListener("pointercancel", this.up);
    element.addEventListener("pointerleave", this.left);
    element.addEventListener("keydown", this.key);
    this.watch = new ResizeObserver(() => { if (element.clientWidth && element.clientHeight) void desk.invokeMethodAsync("Sized", element.clientWidth, element.clientHeight); });
    this.watch.observe(element);
  }

  show(svg: string, selected: string, hovered: string): void {
    this.element.innerHTML = svg;
    this.point(selected, hovered);
    this.element.dataset.drawn = String(Number(this.element.dataset.drawn ?? 0) + 1);
  }

  point(selected: string, hovered: string): void {
    for (const was of this.element.querySelectorAll(".selected, .hovered")) was.classList.remove("selected", "hovered");
    for (const [tag, name] of [[selected, "selected"], [hovered, "hovered"]] as const)
      if (tag) for (const part of this.element.querySelectorAll(`[data-tag="${CSS.escape(tag)}"]`)) part.classList.add(name);
  }

  dispose(): void {
    this.watch.disconnect();
    this.element.replaceChildren();
  }

  private x(event: MouseEvent): number { return event.clientX - this.element.getBoundingClientRect().left; }

  private readonly wheel = (event: WheelEvent): void => {
    event.preventDefault();
    this.zoom = { factor: (this.zoom?.factor ?? 1) * Math.exp(event.deltaY * 0.0015), x: this.x(event) };
    this.go();
  };

  private readonly down = (event: PointerEvent): void => { this.grabbed = { x: event.clientX, id: event.pointerId, moved: false }; };

  private readonly move = (event: PointerEvent): void => {
    const held = this.grabbed;
    if (held && event.buttons) {
      if (!held.moved && Math.abs(event.clientX - held.x) < 4) return;
      if (!held.moved) this.element.setPointerCapture(held.id);
      held.moved = true;
      this.pan += held.x - event.clientX;
      held.x = event.clientX;
      this.go();
      return;
    }
    const tag = this.tag(event);
    if (tag === this.hovered) return;
    this.hovered = tag;
    void this.desk.invokeMethodAsync("Hovered", tag);
  };

  private readonly up = (event: PointerEvent): void => {
    const clicked = this.grabbed && !this.grabbed.moved && event.type === "pointerup";
    this.grabbed = undefined;
    if (clicked) void this.desk.invokeMethodAsync("Picked", this.tag(event));
  };

  private readonly left = (): void => {
    if (!this.hovered) return;
    this.hovered = "";
    void this.desk.invokeMethodAsync("Hovered", "");
  };

  private readonly key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    if (!["ArrowLeft", "ArrowRight", "Home", "End", "+", "-", "0"].includes(event.key)) return;
    event.preventDefault();
    void this.desk.invokeMethodAsync("Pressed", event.key);
  };

  /** What is nearest on top; of a thing without a tag that of nothing. */
  private tag(event: PointerEvent): string {
    const under = document.elementsFromPoint(event.clientX, event.clientY).filter((e): e is SVGElement => e instanceof SVGElement && this.element.contains(e) && !!(e as SVGElement).dataset.tag);
    const exact = under.find((e) => /^(problem|gate|grading)/.test(e.dataset.tag!)) ?? under.find((e) => e.dataset.tag!.startsWith("post")) ?? under.find((e) => e.dataset.tag!.startsWith("bay")) ?? under[0];
    return exact?.dataset.tag ?? "";
  }

  /** One question at a time: what the hand does meanwhile is gathered. */
  private go(): void {
    if (this.busy) return;
    this.busy = true;
    requestAnimationFrame(async () => {
      const [pan, zoom] = [this.pan, this.zoom];
      [this.pan, this.zoom] = [0, undefined];
      try { await this.desk.invokeMethodAsync("Moved", pan, zoom?.factor ?? 1, zoom?.x ?? 0); } finally { this.busy = false; }
      if (this.pan || this.zoom) this.go();
    });
  }
}

export function create(element: HTMLElement, desk: Desk): Profile { return new Profile(element, desk); }
