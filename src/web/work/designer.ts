/** The worker as a function: a file in, its design out. */
import type { Laid, ProjectFile } from "../../design.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { DesignAnswer, DesignReply } from "./messages.ts";
import { unpacked } from "./packed.ts";

export interface Designer {
  /** @param onFacade hears of the facade as soon as it is set out; its findings follow with the answer */
  design(file: ProjectFile, onFacade?: (laid: Laid) => void): Promise<DesignAnswer>;
  /** Loads the worker, and lets it design a file, before it is needed. */
  warm(file?: ProjectFile): void;
}

interface Waiting {
  readonly onFacade: ((laid: Laid) => void) | undefined;
  readonly resolve: (answer: DesignAnswer) => void;
}

/** The worker is loaded when it is first needed, so that it does not hold up the page. */
export function createDesigner(): Designer {
  const waiting = new Map<number, Waiting>();
  let held: readonly FaceLayout[] = [];
  /** The facade that waits for its findings. */
  let laid: Laid | undefined;
  let worker: Worker | undefined;
  let last = 0;
  const take = ({ id, ...reply }: DesignReply): void => {
    const asked = waiting.get(id);
    if (reply.kind === "laid") {
      const facade = unpacked(reply.laid.facade, held);
      held = facade.faces;
      laid = { ...reply.laid, facade };
      asked?.onFacade?.(laid);
      return;
    }
    waiting.delete(id);
    if (reply.kind !== "designed") asked?.resolve(reply);
    else if (laid) {
      const { laying, findings, ...rest } = reply;
      const design = { ...laid, facade: { ...laid.facade, findings: laying }, findings };
      asked?.resolve({ ...rest, design });
    }
  };
  const running = (): Worker => {
    if (worker) return worker;
    worker = new Worker(new URL("./design.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<DesignReply>) => take(data));
    return worker;
  };
  const design: Designer["design"] = (file, onFacade) => {
    last += 1;
    const id = last;
    return new Promise((resolve) => {
      waiting.set(id, { onFacade, resolve });
      running().postMessage({ id, file });
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
