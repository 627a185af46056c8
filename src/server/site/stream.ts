/** One open stream of news (server-sent events, WHATWG HTML 9.2), until the page leaves or may no longer listen. */
import type { Live, News } from "../live.ts";
import { policyHeaders } from "../policy.ts";

/** A line now and then, so that a dead connection is noticed and nothing between closes a quiet one. */
const BEAT_MS = 20_000;

export interface Listening {
  readonly live: Live;
  readonly project: string;
  /** What the page could have missed before it listened. */
  readonly first: readonly News[];
  /** Asked before every line: whoever was shut out hears nothing more. */
  readonly mayListen: () => Promise<boolean>;
  /** Called once, when the stream has ended. */
  readonly ended: () => void;
}

export function newsStream({ live, project, first, mayListen, ended }: Listening): Response {
  const encoder = new TextEncoder();
  let stop = (): void => undefined;
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => {
      let over = false;
      const send = async (line: string): Promise<void> => {
        const may = await mayListen().catch(() => false);
        if (over) return;
        if (!may) {
          stop();
          controller.close();
        } else controller.enqueue(encoder.encode(line));
      };
      const hear = ({ kind, number }: News): void => {
        void send(`event: ${kind}\ndata: ${JSON.stringify({ number })}\n\n`);
      };
      const beat = setInterval(() => void send(": still here\n\n"), BEAT_MS);
      const leave = live.listen(project, hear);
      stop = () => {
        if (over) return;
        over = true;
        clearInterval(beat);
        leave();
        ended();
      };
      for (const news of first) hear(news);
    },
    cancel: () => stop(),
  });
  return new Response(body, {
    headers: {
      ...policyHeaders("page"),
      "Content-Type": "text/event-stream; charset=utf-8",
      "Cache-Control": "no-store",
    },
  });
}
