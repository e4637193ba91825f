import { cut } from "./cut";
import { files } from "./files";
import { paper } from "./paper";
import { parts } from "./parts";
import { places } from "./places";
import { plan } from "./plan";
import { shell } from "./shell";
import { solid } from "./solid";
import { survey } from "./survey";

/** British English: the language that the others are translated from. */
export const enGB = { ...shell, ...files, ...parts, ...places, ...survey, ...paper, ...plan, ...cut, ...solid };
