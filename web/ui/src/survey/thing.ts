/** An opening or a fitting, by its wall and its place in the wall's list, both as in the job. */
export interface Thing {
  kind: "opening" | "fitting";
  wall: number;
  index: number;
}
