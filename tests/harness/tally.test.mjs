// The harness must be able to fail: each test here feeds it a small run that it has to judge.
import assert from "node:assert/strict";
import { test } from "node:test";
import { isAllowed, parseSkipList, readReport, sum } from "./tally.mjs";

const report = (...tests) => ({ results: { tests: tests.map(([name, status]) => ({ name, status, message: `about ${name}` })), extra: { suites: [] } } });
const run = (exitCode, rep) => ({ phase: "fast", project: "P", exitCode, report: rep, log: "none" });
const none = parseSkipList("");
const counts = (t) => [t.passed, t.failures.length, t.skips.length];

test("passes, failures and skips are counted apart", () =>
  assert.deepEqual(counts(sum([run(1, report(["A", "passed"], ["B", "failed"], ["C", "skipped"]))], none, false)), [1, 1, 1]));

test("a skip that is not on the list fails only when strict", () => {
  const runs = [run(0, report(["A", "passed"], ["N.C", "skipped"]))];
  assert.deepEqual(counts(sum(runs, none, true)), [1, 1, 0]);
  assert.deepEqual(counts(sum(runs, parseSkipList("N.C  # reason"), true)), [1, 0, 1]);
});

test("an explicit test is a skip, not nothing", () =>
  assert.deepEqual(counts(sum([run(0, report(["A", "passed"], ["B", "pending"]))], none, false)), [1, 0, 1]));

test("a status nobody knows is a failure", () => assert.equal(readReport(report(["A", "other"]), 0).failures.length, 1));

test("a project without tests fails, also over two phases", () => {
  assert.deepEqual(counts(sum([run(0, report()), run(0, report())], none, false)), [0, 1, 0]);
  assert.deepEqual(counts(sum([run(0, report()), run(0, report(["S", "passed"]))], none, false)), [1, 0, 0]);
});

test("an executable that dies without a report, or after its tests, fails", () => {
  assert.deepEqual(counts(sum([run(134, undefined)], none, false)), [0, 1, 0]);
  assert.deepEqual(counts(sum([run(3, report(["A", "passed"]))], none, false)), [1, 1, 0]);
});

test("a fixture that throws is a failure", () => {
  const rep = report(["A", "passed"]);
  rep.results.extra.suites = [{ errors: [{ name: "F", type: "test-class-cleanup", message: "m" }] }];
  assert.deepEqual(counts(sum([run(1, rep)], none, false)), [1, 1, 0]);
});

test("a check counts as one test", () => {
  const check = (exitCode) => ({ phase: "check", project: "format", exitCode, log: "none" });
  assert.deepEqual(counts(sum([check(0)], none, false)), [1, 0, 0]);
  assert.deepEqual(counts(sum([check(2)], none, false)), [0, 1, 0]);
});

test("the skip list takes names and prefixes, and wants reasons", () => {
  const { entries, faults } = parseSkipList("# heading\n\nA.B(x: \"#1\")  # no tool\nC.*  # why\nD.E\n*  # all\n");
  assert.deepEqual(entries.map((e) => e.name), ["A.B(x: \"#1\")", "C.*"]);
  assert.equal(faults.length, 2);
  assert.ok(isAllowed(entries, "C.anything"));
  assert.ok(!isAllowed(entries, "A.B"));
  assert.equal(sum([], { entries, faults }, false).failures.length, 2);
});
