// What is on its way: a line being drawn, a corner or a thing being dragged. It is drawn over the picture and gone when it is dropped.
import type { Point } from "./picture";

export interface Ghost {
  /** Points of a line being drawn, or the two legs beside a dragged corner. */
  path: Point[];
  /** Words beside each stretch of the path. */
  lengths: string[];
  /** Where it stands, with words of its own. */
  at?: Point;
  words?: string;
  /** What it has snapped to. */
  snap?: { kind: string; at: Point; round: boolean };
  /** From here the stretch under the pointer is marked along the line. */
  stretch?: number[];
}

export const noGhost: Ghost = { path: [], lengths: [] };
