/**
 * Sends what waits, in the order told. An entry leaves the queue only when the server says that it has it, so a lost answer
 * sends it again, and the server knows it by its id (`docs/decisions/0020`): nothing is lost, nothing doubled.
 */
import {
  type Answer,
  type EntryAnswer,
  type Line,
  photosOf,
  type QueueStore,
  type Waiting,
  type Whys,
} from "./model.ts";

/** Where it came to rest. */
export type Rest = "empty" | "away" | "signed-out";

/** As many entries go at once. */
const BATCH = 50;

export async function sendWaiting(
  store: QueueStore,
  line: Line,
  { whys, onStep }: { readonly whys: Whys; readonly onStep?: () => void },
): Promise<Rest> {
  let most = BATCH;
  for (;;) {
    const open = (await store.waiting()).filter(({ refused }) => refused === undefined);
    const [first] = open;
    if (!first) return "empty";
    const batch = runOf(open, first.project).slice(0, most);
    const photos = await sendPhotos(batch, { store, line });
    if (photos === "refused") {
      onStep?.();
      continue;
    }
    if (photos !== "sent") return photos;
    const answer = await line.send(
      first.project,
      batch.map(({ entry }) => entry),
    );
    if (answer.kind === "done") {
      if (!(await settle(batch, { answers: answer.done, store, whys }))) return "away";
      most = BATCH;
    } else if (answer.kind === "refused") {
      // One of them is to blame: alone it is found, and the others go.
      if (batch.length === 1) {
        await store.refused(first, answer.why);
        most = BATCH;
      } else most = 1;
    } else return answer.kind;
    onStep?.();
  }
}

/** The first of the queue that go to one journal. */
function runOf(open: readonly Waiting[], project: string): readonly Waiting[] {
  const end = open.findIndex((one) => one.project !== project);
  return end < 0 ? open : open.slice(0, end);
}

/** False where the server answered for none of them: asking again at once would not end. */
async function settle(
  batch: readonly Waiting[],
  { answers, store, whys }: { answers: readonly EntryAnswer[]; store: QueueStore; whys: Whys },
): Promise<boolean> {
  for (const [at, waiting] of batch.entries()) {
    const said = answers[at];
    if (!said) return at > 0;
    if (said.kind === "refused") await store.refused(waiting, whys.unusable(said.field));
    else if (said.kind === "other") {
      await store.refused(waiting, whys.other);
      await store.renameDevice();
    } else await store.arrived(waiting, said.number);
  }
  return true;
}

/** Pictures go before the entry that shows them. */
async function sendPhotos(
  batch: readonly Waiting[],
  { store, line }: { store: QueueStore; line: Line },
): Promise<"sent" | "refused" | Exclude<Rest, "empty">> {
  for (const waiting of batch) {
    for (const sha256 of photosOf(waiting.entry)) {
      const picture = await store.photoToSend(sha256);
      if (!picture) continue;
      const answer: Answer<true> = await line.sendPhoto(sha256, picture);
      if (answer.kind === "done") await store.photoArrived(sha256);
      else if (answer.kind === "refused") {
        await store.refused(waiting, answer.why);
        return "refused";
      } else return answer.kind;
    }
  }
  return "sent";
}
