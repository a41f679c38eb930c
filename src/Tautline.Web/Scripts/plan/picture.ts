// The picture of a plan as the page sends it: words and single things as JSON, what there are thousands of as packed numbers.

export type Point = [east: number, north: number];

export interface LinePart { id: string; name: string; closed: boolean; plan: number; firstLeg: number; legs: number; firstVertex: number; vertices: number; firstPost: number; posts: number }
export interface LegPart { line: number; index: number; id: string | null; length: string; bearing: string; east: number; north: number; azimuth: number }
export interface VertexPart { line: number; index: number; id: string; east: number; north: number; turn: string; inside: number }
export interface GatePart { line: number; index: number; id: string; kind: string; words: string; faces: number[]; leaves: number[][]; open: number[][]; arcs: number[][]; roller: number[] }
export interface StretchPart { group: string; kind: string; id: string; line: number; words: string; path: number[]; around: number[]; width: number }
export interface PinPart { line: number; id: string; stands: boolean; east: number; north: number; azimuth: number }
export interface MarkPart { line: number; words: string; east: number; north: number; azimuth: number }
export interface TiePart { line: number; kind: string; east: number; north: number; azimuth: number }
export interface PullPart { run: number; order: number; path: number[] }
export interface DropPart { run: number; rolls: number; certain: boolean; east: number; north: number }
export interface ProblemPart { index: number; severity: number; east: number; north: number }

export interface Content {
  metric: boolean;
  lines: LinePart[]; legs: LegPart[]; vertices: VertexPart[]; gates: GatePart[]; stretches: StretchPart[]; pins: PinPart[]; stations: MarkPart[];
  ties: TiePart[]; pulls: PullPart[]; drops: DropPart[]; problems: ProblemPart[]; extent: number[];
}

export interface Picture extends Content {
  legPoints: Float64Array; legStarts: Int32Array; postsAt: Float64Array; postKinds: Int32Array;
  /** line, its own index, first post, last post */
  runs: Int32Array;
  /** run, first post, last post */
  bays: Int32Array;
}

/** Kinds of posts, as the plan counts them. */
export const Post = { line: 0, end: 1, corner: 2, gate: 3, pull: 4, gradeBreak: 5, change: 6, tie: 7 } as const;

export const empty: Picture = {
  metric: false, lines: [], legs: [], vertices: [], gates: [], stretches: [], pins: [], stations: [], ties: [], pulls: [], drops: [], problems: [],
  extent: [0, 0, 0, 0], legPoints: new Float64Array(), legStarts: new Int32Array(1), postsAt: new Float64Array(), postKinds: new Int32Array(),
  runs: new Int32Array(), bays: new Int32Array(),
};

function doubles(bytes: Uint8Array): Float64Array { return new Float64Array(bytes.slice().buffer); }
function whole(bytes: Uint8Array): Int32Array { return new Int32Array(bytes.slice().buffer); }

export function unpack(json: Uint8Array, legPoints: Uint8Array, legStarts: Uint8Array, postsAt: Uint8Array, postKinds: Uint8Array, runs: Uint8Array, bays: Uint8Array): Picture {
  const content = JSON.parse(new TextDecoder().decode(json)) as Content;
  return {
    ...content, legPoints: doubles(legPoints), legStarts: whole(legStarts), postsAt: doubles(postsAt), postKinds: whole(postKinds), runs: whole(runs), bays: whole(bays),
  };
}

/** What is pointed at: what it is, its line and index in the picture, its id in the job. */
export interface Target { kind: string; line: number; index: number; id: string; part?: string }

export const nothing: Target = { kind: "none", line: -1, index: -1, id: "" };

export function same(a: Target, b: Target): boolean { return a.kind === b.kind && a.line === b.line && a.index === b.index && a.id === b.id; }
