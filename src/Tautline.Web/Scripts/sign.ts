// A pad to sign on: strokes of a finger or pen, in thousandths of the pad's width. The page keeps them; here is only the one that is being drawn.
interface Desk { invokeMethodAsync(name: string, ...values: unknown[]): Promise<unknown> }

const most = 400; // points of one stroke; a longer one goes on as the next

class Pad {
  private points: number[] = [];
  private pen = -1;

  constructor(private readonly element: SVGSVGElement, private readonly live: SVGPolylineElement, private readonly desk: Desk) {
    element.addEventListener("pointerdown", this.down);
    element.addEventListener("pointermove", this.move);
    element.addEventListener("pointerup", this.up);
    element.addEventListener("pointercancel", this.up);
  }

  dispose(): void {
    this.element.removeEventListener("pointerdown", this.down);
    this.element.removeEventListener("pointermove", this.move);
    this.element.removeEventListener("pointerup", this.up);
    this.element.removeEventListener("pointercancel", this.up);
  }

  private readonly down = (event: PointerEvent): void => {
    if (this.pen >= 0 || event.button !== 0) return; // the heel of a hand is no second pen
    this.pen = event.pointerId;
    this.element.setPointerCapture(this.pen);
    this.points = [];
    this.add(event);
  };

  private readonly move = (event: PointerEvent): void => {
    if (event.pointerId !== this.pen) return;
    for (const each of event.getCoalescedEvents?.() ?? [event]) this.add(each);
    if (this.points.length >= 2 * most) this.send(this.points.slice(-2));
  };

  private readonly up = (event: PointerEvent): void => {
    if (event.pointerId !== this.pen) return;
    this.pen = -1;
    this.send([]);
  };

  private add(event: PointerEvent): void {
    const box = this.element.getBoundingClientRect();
    const x = Math.round(1000 * (event.clientX - box.left) / box.width), y = Math.round(1000 * (event.clientY - box.top) / box.width);
    const [lastX, lastY] = this.points.slice(-2);
    if (lastX !== undefined && lastY !== undefined && Math.abs(x - lastX) + Math.abs(y - lastY) < 4) return;
    this.points.push(x, y);
    this.live.setAttribute("points", this.points.join(" "));
  }

  private send(rest: number[]): void {
    const stroke = this.points;
    this.points = rest;
    void this.desk.invokeMethodAsync("Drawn", stroke).then(() => { if (this.points.length === rest.length) this.live.setAttribute("points", rest.join(" ")); });
  }
}

export function pad(element: SVGSVGElement, live: SVGPolylineElement, desk: Desk): Pad { return new Pad(element, live, desk); }
