/** What each project's journal comes to, reckoned on from what was put by: a server that has just begun reads no journal through. */
import type { Entry } from "../../site/journal/entry.ts";
import { createFold, FOLD_VERSION, type Fold, type SiteState } from "../../site/journal/fold.ts";
import { type FoldedAt, foldedAt } from "../../site/journal/opening.ts";
import { LARGEST_PAGE } from "../../store/journal.ts";
import type { Store } from "../../store/store.ts";
import { type Answered, answered, answeredBytes } from "../answers.ts";

/** After so many entries what they come to is put by again: half of what one page of entries since holds. */
const PUT_BY_EVERY = LARGEST_PAGE / 2;

export interface SiteFolds {
  /** The state and the number of the latest entry that it is made of. */
  state(project: string): Promise<Answered>;
  /** An `Opening`. */
  opening(project: string): Promise<Answered>;
  /** Told of every entry that came, for it to put by what they come to. Never fails: what was not put by is reckoned anew. */
  came(project: string, latest: number): Promise<void>;
}

interface Held {
  readonly fold: Fold;
  latest: number;
  /** As it is sent; made anew after an entry more. */
  answer: Answered | undefined;
}

/** One for all listeners of a store: what one has reckoned the others need not. */
const foldsOf = new WeakMap<Store, SiteFolds>();

export function siteFolds(store: Store): SiteFolds {
  const known = foldsOf.get(store) ?? createSiteFolds(store);
  foldsOf.set(store, known);
  return known;
}

/** Of a piece the furthest stage alone: which ticks say so, a journal's own pages tell. */
function stateSaid({ pieces, ...lists }: SiteState) {
  const stages = pieces.marks().map((mark) => [mark, { stage: pieces.stage(mark) }] as const);
  return { pieces: Object.fromEntries(stages), ...lists };
}

function createSiteFolds({ journal }: Store): SiteFolds {
  const held = new Map<string, Held>();
  /** Numbers up to which was put by. */
  const putBy = new Map<string, number>();
  const turns = new Map<string, Promise<unknown>>();

  /** One after another for each project: two that read the same entries would hold two folds. */
  const inTurn = <Answer>(project: string, work: () => Promise<Answer>): Promise<Answer> => {
    const turn = (turns.get(project) ?? Promise.resolve()).then(work, work);
    turns.set(project, turn);
    return turn;
  };

  const begun = async (project: string): Promise<Held> => {
    const kept = await journal.fold(project, FOLD_VERSION);
    const at = kept && (JSON.parse(new TextDecoder().decode(kept.content)) as FoldedAt);
    return { fold: createFold(at), latest: at?.latest ?? 0, answer: undefined };
  };

  const upToDate = async (project: string): Promise<Held> => {
    const one = held.get(project) ?? (await begun(project));
    for (;;) {
      const { entries, latest } = await journal.after(project, { after: one.latest, limit: LARGEST_PAGE });
      const last = entries.at(-1);
      if (last) {
        one.fold.add(entries.map(({ entry }) => entry as Entry));
        one.latest = last.number;
        one.answer = undefined;
      }
      if (one.latest >= latest) break;
    }
    if (one.latest > 0) held.set(project, one);
    return one;
  };

  const putByNow = async (project: string): Promise<void> => {
    const { fold, latest } = await upToDate(project);
    const content = Buffer.from(JSON.stringify(foldedAt(latest, fold)));
    await journal.keepFold(project, FOLD_VERSION, { number: latest, content });
    putBy.set(project, latest);
  };

  const numberPutBy = async (project: string): Promise<number> => {
    const number = putBy.get(project) ?? (await journal.fold(project, FOLD_VERSION))?.number ?? 0;
    putBy.set(project, number);
    return number;
  };

  return {
    state: (project) =>
      inTurn(project, async () => {
        const one = await upToDate(project);
        one.answer ??= answered({ latest: one.latest, state: stateSaid(one.fold.state()) });
        return one.answer;
      }),

    opening: (project) =>
      inTurn(project, async () => {
        const sinceFold = async () => {
          const kept = await journal.fold(project, FOLD_VERSION);
          const page = await journal.after(project, { after: kept?.number ?? 0, limit: LARGEST_PAGE });
          const isWhole = (page.entries.at(-1)?.number ?? kept?.number ?? 0) >= page.latest;
          return { kept, page, isWhole };
        };
        let found = await sinceFold();
        if (!found.isWhole) {
          await putByNow(project);
          found = await sinceFold();
        }
        const { kept, page } = found;
        const since = `,"entries":${JSON.stringify(page.entries)},"latest":${page.latest}}\n`;
        return answeredBytes(
          Buffer.concat([
            Buffer.from('{"folded":'),
            kept?.content ?? Buffer.from("null"),
            Buffer.from(since),
          ]),
        );
      }),

    came: (project, latest) =>
      inTurn(project, async () => {
        if (latest - (await numberPutBy(project)) >= PUT_BY_EVERY) await putByNow(project);
      }).catch(() => undefined),
  };
}
