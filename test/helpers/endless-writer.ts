/** A program that writes into a database without end, and says what it was told is kept: to be killed. Bundled by `store-killed.test.ts`. */
import { openStore } from "../../src/store/open.ts";

const [folder = "", what = "", from = "1"] = process.argv.slice(2);
const PROJECT = "0123456789abcdef01234567";
const time = "2026-03-01T10:00:00.000Z";

const opened = await openStore(folder);
if (!opened.ok) throw new Error(opened.says.key);
const { store } = opened;

/** Goes on only once it is out: what waits in this process would die with it, kept and not said. */
function say(number: number | undefined): Promise<void> {
  return new Promise((done) => {
    process.stdout.write(`${number}\n`, () => done());
  });
}

/** One revision after another; says the number of each. */
async function revise(): Promise<never> {
  const says = { key: "page.edit.read", values: {} };
  let onto = (await store.project(PROJECT))?.latest.tag;
  for (let n = Number(from); ; n++) {
    const document = { n, bulk: "x".repeat(20_000) };
    const answer = await store.put(PROJECT, { name: "a", title: "a", document, says, time, onto });
    if (answer.kind !== "kept") throw new Error(`revision ${n} was not kept`);
    onto = answer.revision.tag;
    await say(n);
  }
}

/** Entries of the journal, three at once; says the last number of each batch. */
async function tell(): Promise<never> {
  for (let n = Number(from); ; n += 3) {
    const entries = [n, n + 1, n + 2].map((count) => ({
      id: `${"ab".repeat(8)}-${count}`,
      bulk: "x".repeat(500),
    }));
    const answers = await store.journal.append(PROJECT, entries, { who: "Ben", time });
    await say(answers.at(-1)?.number);
  }
}

await (what === "revisions" ? revise() : tell());
