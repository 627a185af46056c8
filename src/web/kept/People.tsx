import { type FormEvent, useEffect, useState } from "react";
import { encode } from "uqr";
import { message } from "../../text/message.ts";
import { useWords } from "../words.ts";
import {
  fetchPeople,
  type Invitation,
  invite,
  type ListedPerson,
  ROLES,
  type Role,
  shutOut,
} from "../work/people-api.ts";
import { Devices } from "./Devices.tsx";
import { TwicePress } from "./TwicePress.tsx";
import { sayTime } from "./time.ts";
import { useAnswers } from "./use-answers.ts";

/** Who may come in from other devices: invited with a link, each in a role, and shut out again. */
export function People() {
  const { w, reader } = useWords();
  const [people, setPeople] = useState<readonly ListedPerson[]>([]);
  const [made, setMade] = useState<Invitation & { readonly name: string }>();
  const { wrong, take } = useAnswers();
  const ask = (): void => void fetchPeople().then((asked) => take(asked, setPeople));
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the part is opened
  useEffect(ask, []);
  const shut = (id: string): void =>
    void shutOut(id).then((asked) => {
      take(asked, () => ask());
    });
  return (
    <>
      <p className="sub">{w("page.kept.people-about")}</p>
      {wrong !== undefined && <p role="alert">{wrong}</p>}
      {people.length > 0 && (
        <ul className="kept-people">
          {people.map(({ id, name, role, revoked, sessions, invited }) => (
            <li key={id}>
              <span>
                <b>{name}</b>, {w(`cli.people.role.${role}`)}
                <span className="sub">
                  {revoked !== null
                    ? w("page.kept.shut-out-on", { time: sayTime(revoked, reader) })
                    : w("page.kept.devices", { count: sessions })}
                  {revoked === null &&
                    invited !== null &&
                    ` · ${w("page.kept.invited-until", { time: sayTime(invited, reader) })}`}
                </span>
                {revoked === null && sessions > 0 && <DevicesOf id={id} name={name} onEnded={ask} />}
              </span>
              {revoked === null && <ShutOut name={name} onShut={() => shut(id)} />}
            </li>
          ))}
        </ul>
      )}
      <InviteForm
        onInvite={(person) =>
          void invite(person).then((asked) =>
            take(asked, (invitation) => {
              setMade({ ...invitation, name: person.name });
              ask();
            }),
          )
        }
      />
      {made && (
        <div className="kept-invitation" role="status">
          <p>{w("page.kept.invited", { name: made.name, time: sayTime(made.until, reader) })}</p>
          <p>
            <code>{made.link}</code>
          </p>
          <Code text={made.link} says={w("page.kept.link-code", { name: made.name })} />
        </div>
      )}
    </>
  );
}

/** Asked for when it is opened. */
function DevicesOf({ id, name, onEnded }: { id: string; name: string; onEnded: () => void }) {
  const { w } = useWords();
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary aria-label={w("page.kept.devices-of", { name })}>{w("page.kept.devices-which")}</summary>
      {open && <Devices of={id} onEnded={onEnded} />}
    </details>
  );
}

/** Sessions end at once, and phones that were not sent ask for sign-in again. */
function ShutOut({ name, onShut }: { name: string; onShut: () => void }) {
  const { w } = useWords();
  return (
    <TwicePress
      first={{ text: w("page.kept.shut-out"), label: w("page.kept.shut-out-whom", { name }) }}
      sure={{ text: w("page.kept.shut-out-now"), label: w("page.kept.shut-out-now-whom", { name }) }}
      onSure={onShut}
    />
  );
}

function InviteForm({ onInvite }: { onInvite: (person: { name: string; role: Role }) => void }) {
  const { w, s } = useWords();
  const [name, setName] = useState("");
  const [role, setRole] = useState<Role>("site");
  const send = (event: FormEvent): void => {
    event.preventDefault();
    onInvite({ name: name.trim(), role });
    setName("");
  };
  return (
    <form className="kept-ways" onSubmit={send}>
      <label>
        {s(message("cli.people.name"))}{" "}
        <input value={name} required maxLength={100} onChange={(event) => setName(event.target.value)} />
      </label>
      <label>
        {s(message("cli.people.role"))}{" "}
        <select value={role} onChange={(event) => setRole(event.target.value as Role)}>
          {ROLES.map((one) => (
            <option key={one} value={one}>
              {w(`cli.people.role.${one}`)}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" className="kept-act">
        {w("page.kept.invite")}
      </button>
      <span className="sub">{w(`page.kept.may-${role}`)}</span>
    </form>
  );
}

/** A link as a code that a phone's camera reads (ISO/IEC 18004), dark on light whatever the page's light. */
function Code({ text, says }: { text: string; says: string }) {
  const { data, size } = encode(text, { border: 4 });
  const dark = data.flatMap((row, y) => row.flatMap((on, x) => (on ? `M${x} ${y}h1v1h-1z` : []))).join("");
  return (
    <svg className="kept-code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={says}>
      <rect width={size} height={size} fill="#fff" />
      <path d={dark} fill="#000" />
    </svg>
  );
}
