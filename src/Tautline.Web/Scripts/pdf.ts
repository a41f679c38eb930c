// A page of a PDF as a picture, to lie under the drawing. Fetched when somebody first chooses one.
import { getDocument, GlobalWorkerOptions, type PDFDocumentProxy } from "pdfjs-dist";

/** As many dots along the longer side as a plan needs to be read at, and a phone can still hold. */
const dots = 4000;

/** wrong: nothing, or 'locked' (a password is asked for), 'unreadable' (no PDF, or broken), 'large' (the browser has no room for the picture). */
export interface PdfPicture { pages: number; page: number; wrong: string; picture: Uint8Array }

const nothing = (wrong: string): PdfPicture => ({ pages: 0, page: 0, wrong, picture: new Uint8Array() });

/** Draws a page, counted from 1; the nearest there is where there is no such page. */
export async function drawPage(bytes: Uint8Array, page: number): Promise<PdfPicture> {
  GlobalWorkerOptions.workerSrc = import.meta.resolve("./pdfworker.mjs");
  let file: PDFDocumentProxy;
  try {
    // The decoders of scanned pages lie beside this module.
    file = await getDocument({ data: bytes.slice(), wasmUrl: new URL("./", import.meta.url).href, stopAtErrors: false }).promise;
  } catch (fault) {
    return nothing((fault as Error).name === "PasswordException" ? "locked" : "unreadable");
  }
  try {
    const number = Math.min(Math.max(1, Math.round(page)), file.numPages);
    const sheet = await file.getPage(number);
    const size = sheet.getViewport({ scale: 1 });
    const viewport = sheet.getViewport({ scale: dots / Math.max(size.width, size.height) });
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
    await sheet.render({ canvas, viewport, background: "white" }).promise;
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
    if (!blob) return nothing("large");
    return { pages: file.numPages, page: number, wrong: "", picture: new Uint8Array(await blob.arrayBuffer()) };
  } catch {
    return nothing("unreadable");
  } finally {
    await file.loadingTask.destroy();
  }
}
