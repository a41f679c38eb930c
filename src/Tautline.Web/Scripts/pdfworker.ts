// Reads a PDF away from the page, so that a heavy one does not stop it.
import "pdfjs-dist/build/pdf.worker.mjs";
