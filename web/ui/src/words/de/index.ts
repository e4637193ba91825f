import { cut } from "./cut";
import { paper } from "./paper";
import { parts } from "./parts";
import { plan } from "./plan";
import { shell } from "./shell";
import { solid } from "./solid";
import { survey } from "./survey";

/** German. */
export const de = { ...shell, ...parts, ...survey, ...paper, ...plan, ...cut, ...solid };
