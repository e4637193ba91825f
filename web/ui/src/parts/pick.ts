/** A thing on the drawing that can be tapped. */
export type Pick =
  | { kind: "wall"; wall: number } // indices in the band's walls
  | { kind: "corner"; wall: number } // the fold at a wall's right end
  | { kind: "opening" | "fitting"; wall: number; index: number } // index in the wall's list as drawn
  | { kind: "drop" | "seam" | "plumb"; index: number } // in the run's list
  | { kind: "start" | "kill" }
  | { kind: "finding"; index: number }; // in the findings that the drawing was given

export function samePick(a: Pick | null | undefined, b: Pick): boolean {
  return JSON.stringify(a ?? null) === JSON.stringify(b);
}
