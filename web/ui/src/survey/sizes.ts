import { settings } from "../settings.svelte";
import { formatNumber } from "../words/text";

/** A drawn length in words, for what is still under the hand: the planner has not seen it yet. */
export function sizeText(mm: number): string {
  if (settings.units === "metric") return `${formatNumber(settings.locale, Math.round(mm))} mm`;
  const sixteenths = Math.round((Math.abs(mm) / 25.4) * 16);
  const feet = Math.floor(sixteenths / 192);
  const inches = Math.floor((sixteenths % 192) / 16);
  const part = sixteenths % 16;
  const by = [8, 4, 2, 1].find((d) => part % d === 0) ?? 1;
  const fraction = part === 0 ? "" : `${inches ? " " : ""}${part / by}/${16 / by}`;
  const inch = inches || fraction || !feet ? `${inches || !fraction ? inches : ""}${fraction}"` : "";
  return `${mm < 0 && sixteenths > 0 ? "−" : ""}${feet ? `${feet}'` : ""}${feet && inch ? " " : ""}${inch}`;
}
