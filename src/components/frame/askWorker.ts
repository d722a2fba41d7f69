// Asks a worker of this site something and waits for its word.

const LONGEST_ANSWER_ms = 20_000;

/** What a worker answers; null where it does not. */
export function askWorker(worker: ServiceWorker, question: object): Promise<unknown> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    const end = (told: unknown) => {
      // An open port is never let go, and a board stands for months.
      port1.close();
      done(told);
    };
    port1.onmessage = ({ data }) => end(data);
    setTimeout(end, LONGEST_ANSWER_ms, null);
    worker.postMessage(question, [port2]);
  });
}
