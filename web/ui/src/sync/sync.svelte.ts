/** What is known of the server. */
class Sync {
  /** Whether the server answered last; null: nobody has asked. */
  server = $state<boolean | null>(null);
}

export const sync = new Sync();
