import type { Place } from "./place";

// Whoever looks at the room: from above, going round it, or standing in it at the
// height of the eyes, turning and walking. Nothing moves by itself.

export interface Eye {
  mode: "round" | "inside";
  /** Which way one looks, in radians: 0 away from the reader, to the right positive. */
  yaw: number;
  /** Upwards positive. */
  pitch: number;
  /** round: from the middle of the room, in metres. */
  distance: number;
  /** inside: where one stands. */
  at: Place;
}

export interface Limits {
  middle: Place;
  /** The farthest that the room reaches from its middle, in metres. */
  reach: number;
  /** Whether one can stand at a place of the floor. */
  free: (x: number, z: number) => boolean;
}

export function turned(eye: Eye, yaw: number, pitch: number): Eye {
  const [low, high] = eye.mode === "round" ? [-1.45, -0.05] : [-1.2, 1.2];
  return { ...eye, yaw: eye.yaw + yaw, pitch: Math.min(Math.max(eye.pitch + pitch, low), high) };
}

/** Nearer (a factor above 1), or so many times half a pace forward. */
export function nearer(eye: Eye, factor: number, limits: Limits): Eye {
  if (eye.mode === "round") return { ...eye, distance: Math.min(Math.max(eye.distance / factor, limits.reach * 0.6), limits.reach * 8) };
  return walked(eye, Math.log(factor), limits);
}

/** Some metres forward, unless a wall stands there. */
export function walked(eye: Eye, metres: number, limits: Limits): Eye {
  const x = eye.at[0] + Math.sin(eye.yaw) * metres;
  const z = eye.at[2] - Math.cos(eye.yaw) * metres;
  return limits.free(x, z) ? { ...eye, at: [x, eye.at[1], z] } : eye;
}

/** Where the eye is, and a point it looks at. */
export function line(eye: Eye, limits: Limits): { from: Place; to: Place } {
  const way: Place = [Math.sin(eye.yaw) * Math.cos(eye.pitch), Math.sin(eye.pitch), -Math.cos(eye.yaw) * Math.cos(eye.pitch)];
  if (eye.mode === "inside") return { from: eye.at, to: [eye.at[0] + way[0], eye.at[1] + way[1], eye.at[2] + way[2]] };
  const m = limits.middle;
  return { from: [m[0] - way[0] * eye.distance, m[1] - way[1] * eye.distance, m[2] - way[2] * eye.distance], to: m };
}

/** The way from a place to another, as yaw. */
export function yawTo(from: Place, to: Place): number {
  return Math.atan2(to[0] - from[0], from[2] - to[2]);
}
