import { unexpected } from "./unexpected.ts";

/** Answers with JSON Lines, each sent as soon as it is known; an unexpected failure is the last line. */
export function streamLines(work: (send: (line: object) => void) => Promise<void>): Response {
  const encoder = new TextEncoder();
  const body = new ReadableStream<Uint8Array>({
    async start(controller) {
      const send = (line: object) => {
        try {
          controller.enqueue(encoder.encode(`${JSON.stringify(line)}\n`));
        } catch {
          // Whoever asked has gone; the work goes on and its answer is kept.
        }
      };
      try {
        await work(send);
      } catch (error) {
        send({ error: unexpected(error) });
      }
      try {
        controller.close();
      } catch {
        // Closed from the other side.
      }
    },
  });
  return new Response(body, {
    headers: {
      "content-type": "application/x-ndjson",
      "cache-control": "no-store",
      "x-accel-buffering": "no",
    },
  });
}
