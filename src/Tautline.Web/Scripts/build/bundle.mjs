// Every script beside this folder becomes one module of its own: what is heavy can then be loaded late.
//   node Scripts/build/bundle.mjs OUTPUT-FOLDER
import { build } from "esbuild";
import { copyFileSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const scripts = dirname(dirname(fileURLToPath(import.meta.url)));
const outdir = process.argv[2] ?? join(scripts, "..", "wwwroot", "scripts");

await build({
  entryPoints: readdirSync(scripts).filter((name) => name.endsWith(".ts")).map((name) => join(scripts, name)),
  outdir,
  bundle: true,
  minify: true,
  format: "esm",
  target: "es2022",
  outExtension: { ".js": ".mjs" },
  legalComments: "none",
  logLevel: "warning",
});

// Scanned pages of a PDF are unpacked by these; they are fetched by the reader itself, and only for such a page.
for (const part of ["jbig2.wasm", "openjpeg.wasm"]) copyFileSync(join(scripts, "..", "node_modules", "pdfjs-dist", "wasm", part), join(outdir, part));
