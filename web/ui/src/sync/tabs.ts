// Tabs of one browser tell each other which job has changed.

export interface News {
  job: string;
}

export class Tabs {
  #channel = new BroadcastChannel("firstdrop");

  constructor(hear: (news: News) => void) {
    this.#channel.onmessage = (event: MessageEvent<News>) => hear(event.data);
  }

  tell(news: News): void {
    this.#channel.postMessage(news);
  }

  close(): void {
    this.#channel.close();
  }
}
