import type { Kept } from "../device/device";
import type { IconName } from "../parts/Icon.svelte";
import type { Saving } from "../job/work.svelte";

/** Where a job is saved, as it is honestly known. */
export type SavedState = "here" | "saving" | "server" | "offline" | "conflict" | "failed";

/**
 * What there is to say about a job: the gravest first. The server is true where it
 * answered last, false where it did not, null where nobody has asked.
 */
export function savedState(kept: Kept, saving: Saving, server: boolean | null): SavedState {
  if (saving === "failed") return "failed";
  if (kept.conflicts.length > 0) return "conflict";
  if (saving === "saving") return "saving";
  if (kept.server?.revision === kept.head) return "server";
  return server === false ? "offline" : "here";
}

type Label = `saved.${SavedState}`;
type Hint = "saved.here.hint" | "saved.server.hint" | "saved.offline.hint" | "saved.conflict.hint";

export const savedWords: Record<SavedState, { label: Label; hint: Hint; icon: IconName }> = {
  here: { label: "saved.here", hint: "saved.here.hint", icon: "here" },
  saving: { label: "saved.saving", hint: "saved.here.hint", icon: "here" },
  server: { label: "saved.server", hint: "saved.server.hint", icon: "server" },
  offline: { label: "saved.offline", hint: "saved.offline.hint", icon: "away" },
  conflict: { label: "saved.conflict", hint: "saved.conflict.hint", icon: "two" },
  failed: { label: "saved.failed", hint: "saved.here.hint", icon: "warn" },
};
