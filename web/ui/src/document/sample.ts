import type { SampleNames } from "./beginnings";

/** The sample's names as tests look for them. */
export const sampleNames: SampleNames = {
  room: "Room",
  paper: "Trellis (invented)",
  left: "left window",
  right: "right window",
  door: "door",
  socket: "bedside socket",
  light: "light switch",
};
