// The service worker, as the page waits for it.

let answered!: () => void;

/**
 * Resolves when the service worker answers this page, or it is clear that none will. On a
 * first visit the worker fetches everything while it is installed: what is large waits for
 * that, and is not fetched twice.
 */
export const keeperAnswers = new Promise<void>((done) => (answered = done));

/** Watches a worker that was registered until it answers; null where none could be. */
export function awaitKeeper(registration: Pick<ServiceWorkerRegistration, "active" | "waiting" | "installing"> | null): void {
  const worker = registration?.active ?? registration?.waiting ?? registration?.installing;
  // One that was active before this page came answers already, or never will: a page that was
  // loaded past it stays without.
  const isOver = () => !worker || worker.state === "activated" || worker.state === "redundant";
  if (isOver()) answered();
  else worker!.addEventListener("statechange", () => isOver() && answered());
}
