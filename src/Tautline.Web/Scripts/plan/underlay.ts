// What lies under the drawing: a picture placed by a world file or by two points, or tiles from an address the person gives. It is kept in this browser beside the
// job and is no part of it: the plan does not depend on it.
import type Map from "ol/Map";
import ImageLayer from "ol/layer/Image";
import TileLayer from "ol/layer/Tile";
import { addCoordinateTransforms } from "ol/proj";
import type Projection from "ol/proj/Projection";
import ImageCanvas from "ol/source/ImageCanvas";
import XYZ from "ol/source/XYZ";

/** east = a x + b y + c, north = d x + e y + f, with x to the right and y down in pixels of the picture: the six figures of a world file. */
export interface Placement { a: number; b: number; c: number; d: number; e: number; f: number }

export interface Kept { job: string; kind: "image" | "tiles"; name: string; blob?: Blob; placement?: Placement; address?: string; faint: number; figures?: number[] }

const database = "tautline-underlay";

function open(): Promise<IDBDatabase> {
  return new Promise((done, failed) => {
    const request = indexedDB.open(database, 1);
    request.onupgradeneeded = () => request.result.createObjectStore("underlays", { keyPath: "job" });
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(new Error("The browser does not let this page keep the picture."));
  });
}

async function change(work: (store: IDBObjectStore) => void): Promise<void> {
  const shelf = await open();
  await new Promise<void>((done, failed) => {
    const transaction = shelf.transaction("underlays", "readwrite");
    transaction.oncomplete = () => done();
    transaction.onabort = () => failed(new Error("There is no room left to keep the picture in this browser."));
    work(transaction.objectStore("underlays"));
  });
  shelf.close();
}

async function find(job: string): Promise<Kept | undefined> {
  const shelf = await open();
  const kept = await new Promise<Kept | undefined>((done) => {
    const request = shelf.transaction("underlays").objectStore("underlays").get(job);
    request.onsuccess = () => done(request.result as Kept | undefined);
    request.onerror = () => done(undefined);
  });
  shelf.close();
  return kept;
}

export class Underlay {
  private layer?: ImageLayer<ImageCanvas> | TileLayer<XYZ>;
  private picture?: ImageBitmap;
  private kept?: Kept;

  constructor(private readonly map: Map, private readonly projection: Projection) {}

  /** Brings back what was kept for a job; says its name, or nothing. */
  async load(job: string): Promise<string> {
    this.clear();
    const kept = await find(job);
    if (!kept) return "";
    await this.lay(kept);
    return kept.name;
  }

  /** Lays a picture down: where its world file says, else over the middle of what is shown. */
  async image(job: string, name: string, bytes: Uint8Array, kind: string, world: number[] | null): Promise<string> {
    const blob = new Blob([bytes.slice()], { type: kind });
    let picture: ImageBitmap;
    try { picture = await createImageBitmap(blob); } catch { return "unreadable"; }
    const placement = world?.length === 6 ? { a: world[0]!, d: world[1]!, b: world[2]!, e: world[3]!, c: world[4]!, f: world[5]! } : this.middle(picture);
    picture.close();
    const kept: Kept = { job, kind: "image", name, blob, placement, faint: 0.55 };
    await this.lay(kept);
    await change((store) => store.put(kept));
    return "";
  }

  /** Tiles of a usual web map. The six figures say where a metre of the site lies on it; tiles are bent to the site as they are drawn. */
  async tiles(job: string, address: string, figures: number[]): Promise<void> {
    const kept: Kept = { job, kind: "tiles", name: address, address, faint: 0.7, figures };
    await this.lay(kept);
    await change((store) => store.put(kept));
  }

  async remove(job: string): Promise<void> {
    this.clear();
    await change((store) => store.delete(job));
  }

  async fade(part: number): Promise<void> {
    if (!this.kept) return;
    this.kept.faint = part;
    this.layer?.setOpacity(part);
    const kept = this.kept;
    await change((store) => store.put(kept));
  }

  /** Turns and scales the picture so that two of its points come to lie on two places of the site. The four are as they are drawn now and as they should be. */
  async fit(from: number[], to: number[]): Promise<boolean> {
    const kept = this.kept;
    if (!kept?.placement) return false;
    const [ux, uy, vx, vy] = [from[2]! - from[0]!, from[3]! - from[1]!, to[2]! - to[0]!, to[3]! - to[1]!];
    const square = ux * ux + uy * uy;
    if (square < 1e-9 || vx * vx + vy * vy < 1e-9) return false;
    const [re, im] = [(ux * vx + uy * vy) / square, (ux * vy - uy * vx) / square];
    const turn = (x: number, y: number): [number, number] => [re * x - im * y, im * x + re * y];
    const p = kept.placement;
    const [a, d] = turn(p.a, p.d);
    const [b, e] = turn(p.b, p.e);
    const [c, f] = turn(p.c - from[0]!, p.f - from[1]!);
    kept.placement = { a, b, d, e, c: c + to[0]!, f: f + to[1]! };
    await this.lay(kept);
    await change((store) => store.put(kept));
    return true;
  }

  dispose(): void { this.clear(); }

  private middle(picture: ImageBitmap): Placement {
    const view = this.map.getView();
    const [size, centre] = [this.map.getSize() ?? [600, 400], view.getCenter() ?? [0, 0]];
    const scale = (view.getResolution() ?? 1) * 0.8 * Math.min(size[0]! / picture.width, size[1]! / picture.height);
    return { a: scale, b: 0, c: centre[0]! - (scale * picture.width) / 2, d: 0, e: -scale, f: centre[1]! + (scale * picture.height) / 2 };
  }

  private async lay(kept: Kept): Promise<void> {
    this.clear();
    this.kept = kept;
    this.layer = kept.kind === "tiles" ? this.tileLayer(kept) : await this.imageLayer(kept);
    if (!this.layer) return;
    this.layer.setOpacity(kept.faint);
    this.map.getLayers().insertAt(0, this.layer);
  }

  private clear(): void {
    if (this.layer) { this.map.removeLayer(this.layer); this.layer.dispose(); }
    this.picture?.close();
    [this.layer, this.picture, this.kept] = [undefined, undefined, undefined];
  }

  private async imageLayer(kept: Kept): Promise<ImageLayer<ImageCanvas> | undefined> {
    if (!kept.blob || !kept.placement) return undefined;
    const picture = await createImageBitmap(kept.blob);
    this.picture = picture;
    const source = new ImageCanvas({
      projection: this.projection, ratio: 1,
      canvasFunction: (extent, resolution, ratio, size) => {
        const canvas = document.createElement("canvas");
        [canvas.width, canvas.height] = size as [number, number];
        const pen = canvas.getContext("2d")!;
        const scale = ratio / resolution;
        const p = kept.placement!;
        // A world file names the middle of the first pixel.
        pen.setTransform(p.a * scale, -p.d * scale, p.b * scale, -p.e * scale, (p.c - extent[0]!) * scale, (extent[3]! - p.f) * scale);
        pen.drawImage(picture, -0.5, -0.5);
        return canvas;
      },
    });
    return new ImageLayer({ source });
  }

  private tileLayer(kept: Kept): TileLayer<XYZ> {
    const [a, b, c, d, e, f] = kept.figures as [number, number, number, number, number, number];
    const det = a * e - b * d;
    addCoordinateTransforms(
      this.projection, "EPSG:3857",
      ([x, y]) => [a * x! + b * y! + c, d * x! + e * y! + f],
      ([x, y]) => [(e * (x! - c) - b * (y! - f)) / det, (a * (y! - f) - d * (x! - c)) / det]);
    return new TileLayer({ source: new XYZ({ url: kept.address!, crossOrigin: "anonymous", maxZoom: 20 }) });
  }
}
