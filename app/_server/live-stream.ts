/**
 * A number that others change, as server-sent events (WHATWG HTML, "Server-sent events"): once at the start and at every
 * change. The event's id is the number, so a page that comes back is told only what it has missed. A comment now and then keeps
 * the line open; whether the reader may still read is asked again every minute.
 */
import "server-only";

const keepAliveMs = 20_000;
const validMs = 60_000;
const retryMs = 2000;

export interface LiveSource {
  /** What the events are called. */
  readonly event: string;
  /** Calls back now and at every change, until the function it returns is called. */
  readonly follow: (tell: (now: number) => void) => () => void;
  /** Whether the reader may still read. */
  readonly isValid: () => Promise<boolean>;
}

export function liveStream(request: Request, { event, follow, isValid }: LiveSource): Response {
  const seen = request.headers.get("last-event-id");
  const encoder = new TextEncoder();
  let end = () => {};
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      const send = (text: string) => {
        try {
          controller.enqueue(encoder.encode(text));
        } catch {
          // The reader has gone without a word; the others must still be told.
          end();
        }
      };
      send(`retry: ${retryMs}\n\n`);
      const leave = follow((now) => {
        if (String(now) !== seen || seen === null) send(`id: ${now}\nevent: ${event}\ndata: ${now}\n\n`);
      });
      const alive = setInterval(() => send(": still here\n\n"), keepAliveMs);
      const valid = setInterval(async () => {
        if (!(await isValid())) end();
      }, validMs);
      end = () => {
        end = () => {};
        leave();
        clearInterval(alive);
        clearInterval(valid);
        try {
          controller.close();
        } catch {
          // Closed from the other side already.
        }
      };
      request.signal.addEventListener("abort", () => end());
    },
    cancel() {
      end();
    },
  });
  const headers = {
    "content-type": "text/event-stream; charset=utf-8",
    "cache-control": "no-store",
    "x-accel-buffering": "no",
  };
  return new Response(body, { headers });
}
