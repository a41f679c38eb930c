// Adds up the reports (CTRF, a JSON format) of the test executables. Used by ./test:
//   tally.mjs line REPORT EXIT-CODE      one line about one executable
//   tally.mjs sum  RUNS.TSV SKIP-LIST    failures, skips and the counts line; exit code 1 if anything failed
import { existsSync, readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const oneLine = (text) => (text ?? "").replace(/\s+/g, " ").trim();

/** The lines `name # reason`; a trailing * makes the name a prefix. Entries without a reason are returned as faults. */
export function parseSkipList(text) {
  const entries = [], faults = [];
  text.split("\n").forEach((raw, i) => {
    const line = raw.trim();
    if (line === "" || line.startsWith("#")) return;
    const cut = line.lastIndexOf(" # ");
    const name = (cut < 0 ? line : line.slice(0, cut)).trim();
    const reason = cut < 0 ? "" : line.slice(cut + 3).trim();
    if (reason === "") faults.push(`line ${i + 1}: '${name}' has no reason; write: ${name}  # why it cannot run`);
    else if (name === "*") faults.push(`line ${i + 1}: '*' would allow every skip; name the tests`);
    else entries.push({ name, reason });
  });
  return { entries, faults };
}

export const isAllowed = (entries, test) =>
  entries.some(({ name }) => name.endsWith("*") ? test.startsWith(name.slice(0, -1)) : test === name);

/** What one report says: counts, failures, skips. An executable that died without a failed test has failed all the same. */
export function readReport(report, exitCode) {
  const results = report?.results;
  const tests = results?.tests ?? [];
  const named = (status) => tests.filter((t) => t.status === status);
  const failures = tests.filter((t) => !["passed", "skipped", "pending"].includes(t.status))
    .map((t) => ({ name: t.name, message: t.message, trace: t.trace }));
  for (const suite of results?.extra?.suites ?? [])
    for (const e of suite.errors ?? []) failures.push({ name: `${e.name} [${e.type}]`, message: e.message, trace: e.trace });
  if (!results) failures.push({ name: "(no report)", message: `wrote no report, exit code ${exitCode}${exitCode === 124 ? ": ran too long and was stopped" : ""}`, log: true });
  else if (exitCode !== 0 && failures.length === 0) failures.push({ name: "(exit code)", message: `every test passed, but the exit code is ${exitCode}`, log: true });
  // 'pending' is a test marked Explicit: it never runs here, so it must be visible as a skip.
  const skips = [...named("skipped"), ...named("pending")].map((t) => ({ name: t.name, reason: oneLine(t.message) }));
  return { count: tests.length, passed: named("passed").length, failures, skips };
}

/** All runs together. `strict`: skips need a place on the list. */
export function sum(runs, skipList, strict) {
  const total = { passed: 0, failures: [], skips: [], notes: [] };
  const perProject = new Map();
  for (const run of runs) {
    if (run.phase === "check") {
      if (run.exitCode === 0) total.passed++;
      else total.failures.push({ name: `check: ${run.project}`, message: `exit code ${run.exitCode}`, log: true, logFile: run.log });
      continue;
    }
    perProject.set(run.project, (perProject.get(run.project) ?? 0) + (run.phase === "left-out" ? 1 : 0));
    if (run.phase === "left-out") continue;
    const r = readReport(run.report, run.exitCode);
    perProject.set(run.project, perProject.get(run.project) + r.count + r.failures.length);
    total.passed += r.passed;
    total.failures.push(...r.failures.map((f) => ({ ...f, name: f.name.startsWith("(") ? `${run.project} ${f.name}` : f.name, logFile: run.log })));
    total.skips.push(...r.skips);
  }
  for (const [project, count] of perProject)
    if (count === 0) total.failures.push({ name: project, message: "no test was run: a test project without tests proves nothing" });
  for (const fault of skipList.faults) total.failures.push({ name: "tests/allowed-skips.txt", message: fault });
  if (strict) {
    for (const s of total.skips.filter((s) => !isAllowed(skipList.entries, s.name)))
      total.failures.push({ name: s.name, message: `skipped (${s.reason}), which CI does not accept: make it run, or put it on tests/allowed-skips.txt with a reason` });
    total.skips = total.skips.filter((s) => isAllowed(skipList.entries, s.name));
  }
  return total;
}

const readJson = (path) => { try { return JSON.parse(readFileSync(path, "utf8")); } catch { return undefined; } };
const indent = (text, n) => text.split("\n").map((l) => " ".repeat(n) + l).join("\n");
const tail = (path, lines) => existsSync(path ?? "") ? readFileSync(path, "utf8").trimEnd().split("\n").slice(-lines).join("\n") : "";

function printLine(path, exitCode) {
  const r = readReport(readJson(path), exitCode);
  console.log(r.count + r.failures.length === 0 ? "no tests" : `${r.passed} passed, ${r.failures.length} failed, ${r.skips.length} skipped`);
}

function printSum(runsFile, listFile) {
  const runs = readFileSync(runsFile, "utf8").split("\n").filter(Boolean).map((line) => {
    const [phase, project, exitCode, report, log] = line.split("\t");
    return { phase, project, exitCode: Number(exitCode), report: report === "-" ? undefined : readJson(report), log };
  });
  const list = parseSkipList(existsSync(listFile) ? readFileSync(listFile, "utf8") : "");
  const t = sum(runs, list, process.env.CI === "true");
  if (t.skips.length) console.log(`\nSkipped:\n${t.skips.map((s) => `  ${s.name}\n      ${s.reason}`).join("\n")}`);
  if (t.failures.length) console.log("\nFailed:");
  for (const f of t.failures) {
    console.log(`  ${f.name}\n${indent(f.message ?? "", 6)}`);
    if (f.trace) console.log(indent(f.trace.split("\n").slice(0, 6).join("\n"), 6));
    if (f.log && tail(f.logFile, 30)) console.log(indent(`end of ${f.logFile}:\n${tail(f.logFile, 30)}`, 6));
  }
  console.log(`\n${t.passed} passed, ${t.failures.length} failed, ${t.skips.length} skipped`);
  process.exitCode = t.failures.length ? 1 : 0;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [command, a, b] = process.argv.slice(2);
  if (command === "line") printLine(a, Number(b));
  else if (command === "sum") printSum(a, b);
  else { console.error("tally.mjs: line REPORT EXIT-CODE | sum RUNS.TSV SKIP-LIST"); process.exitCode = 2; }
}
