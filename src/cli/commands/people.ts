/** `outerleaf people`: who may come in from other devices; invites and shuts out. */
import { renderUnicodeCompact } from "uqr";
import { asInHeader } from "../../server/lan.ts";
import { outsideAddresses } from "../../server/own-hosts.ts";
import { INVITED_DAYS, invitationLink, invitationSecret, newPersonId } from "../../server/secrets.ts";
import type { Store } from "../../store/store.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import type { Answer } from "../answer.ts";
import type { Job } from "../job.ts";
import { table } from "../print/table.ts";
import { LAN_PORT } from "../serving.ts";
import { withStore } from "../store.ts";

const ACTIONS = { list, invite, revoke } as const;

export async function command(job: Job): Promise<Answer> {
  const action = job.words[0] ?? "list";
  if (!Object.hasOwn(ACTIONS, action)) {
    return {
      refused: message("cli.refused.people-action", { action }),
      hint: message("cli.hint.example", { example: "outerleaf people list" }),
    };
  }
  return withStore<Answer>(job, (store) => ACTIONS[action as keyof typeof ACTIONS](job, store));
}

async function list({ reader }: Job, { people }: Store): Promise<Answer> {
  const all = await people.list({ time: new Date().toISOString() });
  const tell = (key: string): string => say(message(key), reader);
  const rows = all.map(({ name, role, sessions, invited, revoked }) => [
    name,
    tell(`cli.people.role.${role}`),
    revoked === null ? String(sessions) : "–",
    revoked === null ? (invited?.slice(0, 10) ?? "–") : tell("cli.people.out"),
  ]);
  const head = ["name", "role", "sessions", "invited"].map((one) => tell(`cli.people.${one}`));
  return {
    exit: 0,
    json: { schemaVersion: 1, people: all },
    text: all.length === 0 ? `${tell("cli.people.none")}\n` : `${table([head, ...rows])}\n`,
  };
}

async function invite({ words, options, reader }: Job, { people }: Store): Promise<Answer> {
  const name = words[1]?.trim() ?? "";
  if (name === "" || name.length > 100) {
    return { refused: message("cli.refused.people-name"), hint: example("invite") };
  }
  const now = new Date();
  const secret = invitationSecret(now);
  const wanted = { id: newPersonId(), name, role: options.role ?? "site", ...secret.lease };
  const time = now.toISOString();
  const person = await people.invite(wanted, { time });
  if (!person) return { refused: message("cli.refused.people-role", { name }), hint: example("revoke") };
  await people.note({ time, who: "", what: "invited", about: { name, role: person.role } });
  const here = `https://${asInHeader(outsideAddresses()[0] ?? "localhost")}:${LAN_PORT}`;
  const link = invitationLink(options.address ?? here, secret);
  const said = message("cli.people.made", { name, days: String(INVITED_DAYS) });
  return {
    exit: 0,
    json: { schemaVersion: 1, person, link, until: secret.lease.until },
    text: `${say(said, reader)}\n\n${link}\n\n${renderUnicodeCompact(link)}\n`,
  };
}

async function revoke({ words, reader }: Job, { people }: Store): Promise<Answer> {
  const name = words[1] ?? "";
  const time = new Date().toISOString();
  const all = await people.list({ time });
  const person = all.find((one) => one.revoked === null && (one.name === name || one.id === name));
  if (!person || !(await people.revoke(person.id, { time }))) {
    return { refused: message("cli.refused.nobody", { name }), hint: example("list") };
  }
  await people.note({ time, who: "", what: "shut-out", about: { person: person.id } });
  const { id, role } = person;
  return {
    exit: 0,
    json: { schemaVersion: 1, person: { id, name: person.name, role }, revoked: time },
    text: `${say(message("cli.people.revoked", { name: person.name }), reader)}\n`,
  };
}

function example(action: keyof typeof ACTIONS) {
  const rest = { list: "", invite: ' "Ada" --role site', revoke: ' "Ada"' }[action];
  return message("cli.hint.example", { example: `outerleaf people ${action}${rest}` });
}
