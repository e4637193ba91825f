import { Mate, type Place, type Shop } from "./crew";
import type { PrintAnswer, PrintRequest } from "./printing";

/** A file to be saved. */
export interface Made {
  name: string;
  blob: Blob;
}

/**
 * Reads job files and prints, in a worker of its own. The program is large and fetched
 * when it is first asked; requests are answered one after the other.
 */
export class Printer {
  #mate: Mate;
  #id = 0;
  #last: Promise<unknown> = Promise.resolve();
  /** Is told what part of a file is made, from 0 to 1, where that is known. */
  onpart: ((part: number) => void) | null = null;

  constructor(place: Place, shop?: Shop) {
    this.#mate = new Mate(place, shop);
    this.#mate.onpart = ({ done, of }) => this.onpart?.(done / of);
  }

  /** Answers a request. */
  ask(request: Omit<PrintRequest, "id">): Promise<PrintAnswer> {
    const answer = this.#last.then(() => this.#mate.ask({ ...request, id: ++this.#id }) as Promise<PrintAnswer>);
    this.#last = answer.catch(() => undefined);
    return answer;
  }
}

/** Returns the file of an answer; null without one. */
export function made(answer: PrintAnswer): Made | null {
  if (!answer.file) return null;
  const bytes = Uint8Array.from(atob(answer.file.data), (c) => c.charCodeAt(0));
  return { name: answer.file.name, blob: new Blob([bytes], { type: answer.file.type }) };
}
