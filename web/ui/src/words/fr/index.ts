import { cut } from "./cut";
import { files } from "./files";
import { paper } from "./paper";
import { parts } from "./parts";
import { places } from "./places";
import { plan } from "./plan";
import { shell } from "./shell";
import { solid } from "./solid";
import { survey } from "./survey";

/** French. */
export const fr = { ...shell, ...files, ...parts, ...places, ...survey, ...paper, ...plan, ...cut, ...solid };
