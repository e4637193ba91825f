import type { Job } from "../planner/job";
import type { UnitSystem } from "../settings.svelte";

// Jobs to begin with. Rooms, papers and prices are invented.

/** Names for what is in the sample, in the user's language. */
export interface SampleNames {
  room: string;
  paper: string;
  left: string; // window
  right: string;
  door: string;
  socket: string;
  light: string;
}

/** A furnished bedroom to look round in. */
export function sampleJob(names: SampleNames): Job {
  return {
    firstdrop: 1,
    name: names.room,
    units: "mm",
    room: {
      height: 2440,
      closed: true,
      walls: [
        {
          name: "A",
          width: 4200,
          sight: "focal",
          openings: [
            { name: names.left, kind: "window", left: 620, width: 1200, sill: 910, height: 1220 },
            { name: names.right, kind: "window", left: 2380, width: 1200, sill: 910, height: 1220 },
          ],
        },
        { name: "B", width: 3600, fittings: [{ name: names.socket, kind: "socket", at: [900, 300], size: [146, 86] }] },
        {
          name: "C",
          width: 4200,
          openings: [{ name: names.door, kind: "door", left: 3300, width: 830, height: 2030 }],
          fittings: [{ name: names.light, kind: "switch", at: [3140, 1100], size: [86, 86] }],
        },
        { name: "D", width: 3600 },
      ],
    },
    papers: [
      {
        name: names.paper,
        width: 520,
        roll: "10.05 m",
        repeat: 530,
        match: "straight",
        picture: "tulips",
        paste: "paper",
        soak_minutes: 8,
        price: "27.90 EUR",
      },
    ],
  };
}

/** Names for what a new job begins with, in the user's language. */
export interface BareNames {
  room: string;
  paper: string;
  wall: (letter: string) => string;
}

/**
 * A bare rectangular room: sizes of no room in particular, to be measured over. The
 * paper is of the commonest size in Europe, or of an American double roll.
 */
export function bareJob(units: UnitSystem, names: BareNames): Job {
  const metric = units === "metric";
  const widths = metric ? [4000, 3000, 4000, 3000] : ["13'", "10'", "13'", "10'"];
  return {
    firstdrop: 1,
    name: names.room,
    units: metric ? "mm" : "in",
    room: {
      height: metric ? 2500 : "8'",
      closed: true,
      walls: widths.map((width, i) => ({ name: names.wall("ABCD"[i]!), width })),
    },
    papers: [
      metric
        ? { name: names.paper, width: 530, roll: "10.05 m", match: "free" }
        : { name: names.paper, width: 20.5, roll: "33 ft", match: "free" },
    ],
  };
}
