/** A short word about what has just happened, with at most one thing to do about it. */
export interface Toast {
  id: number;
  text: string;
  action?: { label: string; run: () => void };
  stays: boolean;
}

class Toasts {
  all = $state.raw<Toast[]>([]);
  #next = 1;

  /** Says something for a while; with stays, until it is closed. A newer toast takes the place of the old. */
  say(text: string, more: { action?: { label: string; run: () => void }; stays?: boolean } = {}): number {
    const toast: Toast = { id: this.#next++, text, stays: more.stays ?? false, ...(more.action && { action: more.action }) };
    this.all = [...this.all.filter((t) => t.stays), toast];
    if (!toast.stays) setTimeout(() => this.close(toast.id), more.action ? 10_000 : 5_000);
    return toast.id;
  }

  close(id: number): void {
    this.all = this.all.filter((t) => t.id !== id);
  }
}

export const toasts = new Toasts();
