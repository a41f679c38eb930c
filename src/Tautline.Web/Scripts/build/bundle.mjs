// Every script beside this folder becomes one module of its own: what is heavy can then be loaded late.
//   node Scripts/build/bundle.mjs OUTPUT-FOLDER
import { build } from "esbuild";
import { readdirSync } from "node:fs";
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
