/** The worker as a function: a file in, its design out. */
import type { ProjectFile } from "../../design.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { DesignAnswer, DesignReply, DesignRequest } from "./messages.ts";
import { unpacked } from "./packed.ts";

export interface Designer {
  design(file: ProjectFile): Promise<DesignAnswer>;
  /** Loads the worker, and lets it design a file, before it is needed. */
  warm(file?: ProjectFile): void;
}

/** The worker is loaded when it is first needed, so that it does not hold up the page. */
export function createDesigner(): Designer {
  const waiting = new Map<number, (answer: DesignAnswer) => void>();
  let held: readonly FaceLayout[] = [];
  let worker: Worker | undefined;
  let last = 0;
  const taken = (answer: DesignReply["answer"]): DesignAnswer => {
    if (answer.kind !== "designed") return answer;
    const whole = unpacked(answer, held);
    held = whole.design.facade.faces;
    return whole;
  };
  const running = (): Worker => {
    if (worker) return worker;
    worker = new Worker(new URL("./design.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<DesignReply>) => {
      const answer = taken(data.answer);
      waiting.get(data.id)?.(answer);
      waiting.delete(data.id);
    });
    return worker;
  };
  const design = (file: ProjectFile): Promise<DesignAnswer> => {
    last += 1;
    const request: DesignRequest = { id: last, file };
    return new Promise((resolve) => {
      waiting.set(request.id, resolve);
      running().postMessage(request);
    });
  };
  return {
    design,
    warm(file) {
      if (file) void design(file);
      else running();
    },
  };
}
