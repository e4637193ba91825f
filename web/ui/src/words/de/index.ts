import { cut } from "./cut";
import { files } from "./files";
import { paper } from "./paper";
import { parts } from "./parts";
import { places } from "./places";
import { plan } from "./plan";
import { shell } from "./shell";
import { solid } from "./solid";
import { survey } from "./survey";

/** German. */
export const de = { ...shell, ...files, ...parts, ...places, ...survey, ...paper, ...plan, ...cut, ...solid };
