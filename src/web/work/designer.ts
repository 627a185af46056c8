/** The worker as a function: a file in, its design out. */
import type { FileLaid, Laid, ProjectFile } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { DesignAnswer, DesignReply, DesignRequest, Overtaken } from "./messages.ts";
import { unpacked, unpackedList } from "./packed.ts";

export interface Designer {
  design(file: ProjectFile): Promise<DesignAnswer>;
  /**
   * Designs a place on the way of an edit; the answer may be that a later one has overtaken it.
   * @param onFacade hears of the facade as soon as it is set out; its findings follow with the answer
   */
  pass(file: ProjectFile, onFacade: (laid: Laid) => void): Promise<DesignAnswer | Overtaken>;
  /** Loads the worker, and lets it design a file, before it is needed. */
  warm(file?: ProjectFile): void;
}

type Whole = Extract<FileLaid, { kind: "laid" }>;

interface Waiting {
  readonly onFacade?: (laid: Laid) => void;
  readonly resolve: (answer: DesignAnswer | Overtaken) => void;
}

/** The worker is loaded when it is first needed, so that it does not hold up the page. */
export function createDesigner(): Designer {
  const asked = new Map<number, Waiting>();
  let faces: readonly FaceLayout[] = [];
  let findings: readonly Finding[] = [];
  /** The facade that waits for its findings. */
  let laid: Whole | undefined;
  let worker: Worker | undefined;
  let last = 0;
  const settle = (id: number, answer: DesignAnswer | Overtaken): void => {
    asked.get(id)?.resolve(answer);
    asked.delete(id);
  };
  const take = ({ id, ...reply }: DesignReply): void => {
    switch (reply.kind) {
      case "laid": {
        const facade = unpacked(reply.laid.facade, faces);
        faces = facade.faces;
        laid = { ...reply, laid: { ...reply.laid, facade } };
        asked.get(id)?.onFacade?.(laid.laid);
        return;
      }
      case "proven": {
        findings = unpackedList(reply.findings, findings);
        if (!laid) return;
        const { laid: whole, ...read } = laid;
        const laying = reply.laying.flatMap((place) => findings[place] ?? []);
        const design = { ...whole, facade: { ...whole.facade, findings: laying }, findings };
        settle(id, { ...read, kind: "designed", design });
        return;
      }
      default:
        settle(id, reply);
    }
  };
  const running = (): Worker => {
    if (worker) return worker;
    worker = new Worker(new URL("./design.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<DesignReply>) => take(data));
    return worker;
  };
  const ask = (
    request: Omit<DesignRequest, "id">,
    onFacade?: (laid: Laid) => void,
  ): Promise<DesignAnswer | Overtaken> => {
    last += 1;
    const id = last;
    return new Promise((resolve) => {
      asked.set(id, { resolve, ...(onFacade && { onFacade }) });
      running().postMessage({ id, ...request } satisfies DesignRequest);
    });
  };
  const design = (file: ProjectFile) => ask({ file, passing: false }) as Promise<DesignAnswer>;
  return {
    design,
    pass: (file, onFacade) => ask({ file, passing: true }, onFacade),
    warm(file) {
      if (file) void design(file);
      else running();
    },
  };
}
