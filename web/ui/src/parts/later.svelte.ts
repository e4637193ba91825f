import { untrack } from "svelte";

/**
 * A value that follows another one frame behind. While a hand drags, what is drawn comes
 * first, and what is only read in a frame of its own, so that neither keeps the hand waiting.
 * It belongs to the component that makes it.
 */
export class Later<T> {
  #value: T;
  #frame = 0;

  constructor(read: () => T) {
    this.#value = $state.raw(untrack(read));
    $effect(() => {
      const next = read();
      if (next === untrack(() => this.#value)) return;
      this.#wait(() => this.#wait(() => (this.#value = untrack(read))));
    });
    $effect(() => () => cancelAnimationFrame(this.#frame));
  }

  get value(): T {
    return this.#value;
  }

  /** The frame that is being made is the drawing's; the next one is this one's. */
  #wait(then: () => void): void {
    this.#frame ||= requestAnimationFrame(() => {
      this.#frame = 0;
      then();
    });
  }
}
