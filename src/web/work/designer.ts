/** The page's designer as a function: a file in, its design out; by a worker, and on the page's own thread while that is quick. */
import type { FileLaid, Laid, ProjectFile } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { DesignAnswer, DesignReply, DesignRequest, Overtaken, WorkerRequest } from "./messages.ts";
import type { Near } from "./near.ts";
import { asHeld, unpacked, unpackedLayouts, unpackedList } from "./packed.ts";
import { createProver } from "./prover.ts";

export interface Designer {
  design(file: ProjectFile): Promise<DesignAnswer>;
  /**
   * Designs a place on the way of an edit; the answer may be that a later one has overtaken it.
   * @param onFacade hears of the facade as soon as it is set out, by hand perhaps before this returns; its findings follow with the answer
   * @param byHand a hand moves what is edited, and waits for each frame
   */
  pass(
    file: ProjectFile,
    onFacade: (laid: Laid) => void,
    byHand?: boolean,
  ): Promise<DesignAnswer | Overtaken>;
  /** Loads the worker, and lets it design a file that the page shows already, before it is needed. */
  warm(shown?: Extract<DesignAnswer, { kind: "designed" }>): void;
  /**
   * Sets imagined edits out while the page rests, so that true ones are quick.
   * @param imagine the file after the nth imagined edit; undefined where there are no more
   * @param draw draws what would be, unseen
   * @returns what stops it
   */
  practise(imagine: (nth: number) => ProjectFile | undefined, draw?: (laid: Laid) => void): () => void;
}

type Whole = Extract<FileLaid, { kind: "laid" }>;

interface Waiting {
  readonly onFacade?: (laid: Laid) => void;
  readonly resolve: (answer: DesignAnswer | Overtaken) => void;
}

/** The hand rests for so long before edits are imagined, milliseconds. */
const REST = 300;

/** The worker is loaded when it is first needed, so that it does not hold up the page. */
export function createDesigner(): Designer {
  const asked = new Map<number, Waiting>();
  let faces: readonly FaceLayout[] = [];
  let findings: readonly Finding[] = [];
  /** The facade that waits for its findings. */
  let laid: Whole | undefined;
  let worker: Worker | undefined;
  let last = 0;
  let near: Near | undefined;
  /** The worker has laid nothing out that is not here as well. */
  let level = false;
  /** Hears that it is so. */
  let onLevel: ((near: Near) => void) | undefined;
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
        const laying = reply.laying.flatMap((place) => findings[place] ?? []);
        const whole = prover.laidOf(id) ?? laid;
        if (!whole) return;
        const { laid: parts, ...read } = whole;
        const design = { ...parts, facade: { ...parts.facade, findings: laying }, findings };
        settle(id, { ...read, kind: "designed", design });
        return;
      }
      case "layouts": {
        const kept = unpackedLayouts(reply.layouts, faces);
        void import("./near.ts").then(({ createNear }) => {
          // A later question has gone past the answer.
          if (id !== last) return;
          near ??= createNear();
          near.begin(kept);
          level = true;
          onLevel?.(near);
        });
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
  const post = (request: WorkerRequest): void => running().postMessage(request);
  const nextId = (): number => {
    last += 1;
    return last;
  };
  const ask = (
    request: Omit<DesignRequest, "id" | "ask">,
    onFacade?: (laid: Laid) => void,
  ): { id: number; answer: Promise<DesignAnswer | Overtaken> } => {
    const id = nextId();
    if (!request.findingsAlone) level = false;
    const answer = new Promise<DesignAnswer | Overtaken>((resolve) => {
      asked.set(id, { resolve, ...(onFacade && { onFacade }) });
      post({ ask: "design", id, ...request });
    });
    return { id, answer };
  };
  const prover = createProver((file) => ask({ file, passing: false, findingsAlone: true }));
  const design = (file: ProjectFile) => ask({ file, passing: false }).answer as Promise<DesignAnswer>;
  return {
    design,
    pass(file, onFacade, byHand = false) {
      let made: FileLaid | undefined;
      try {
        if (level && byHand) made = near?.lay(file);
      } catch {
        return Promise.resolve({ kind: "broken", name: file.name });
      }
      if (made?.kind === "refused") return Promise.resolve(made);
      if (made) {
        onFacade(made.laid);
        return prover.prove(file, made);
      }
      let turn: number | undefined;
      const { answer } = ask({ file, passing: true }, (facade) => {
        turn = prover.newer();
        onFacade(facade);
      });
      return answer.then((found) => (turn === undefined ? found : prover.asOf(turn, found)));
    },
    warm(shown) {
      if (!shown) {
        running();
        return;
      }
      const { name, document } = shown;
      ask({ file: { name, document }, passing: false }, ({ facade }) => {
        // The page knows by their identity what it has drawn.
        faces = asHeld(facade.faces, shown.design.facade.faces);
      });
    },
    practise(imagine, draw) {
      let idle = 0;
      let nth = 0;
      const go = (by: Near): void => {
        if (!by.wantsPractice()) return;
        idle = requestIdleCallback(() => {
          const file = imagine(nth);
          nth += 1;
          if (!file) return;
          const laid = by.practise(file);
          if (laid) draw?.(laid);
          go(by);
        });
      };
      const timer = setTimeout(() => {
        onLevel = go;
        if (near && level) go(near);
        else post({ ask: "layouts", id: nextId() });
      }, REST);
      return () => {
        clearTimeout(timer);
        cancelIdleCallback(idle);
        onLevel = undefined;
      };
    },
  };
}
