import { useCallback, useEffect, useState } from "react";
import { useWords } from "../words.ts";
import { type DeviceSession, endSession, fetchSessions } from "../work/people-api.ts";
import { TwicePress } from "./TwicePress.tsx";
import { sayTime } from "./time.ts";
import { useAnswers } from "./use-answers.ts";

/** The devices on which someone is signed in, each with a press that ends its session alone. */
export function Devices({
  of,
  onEnded,
}: {
  /** A person's id; absent for whoever asks. */
  of?: string;
  onEnded?: () => void;
}) {
  const { w, reader } = useWords();
  const [devices, setDevices] = useState<readonly DeviceSession[]>();
  const { wrong, setWrong, take } = useAnswers();
  const ask = useCallback(() => fetchSessions(of).then((asked) => take(asked, setDevices)), [of, take]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each person, when the list is opened
  useEffect(() => void ask(), [of]);
  const end = async (id: string): Promise<void> => {
    const asked = await endSession(id, of);
    // One that has ended meanwhile is gone from the list as well.
    await ask();
    if (asked.ok) onEnded?.();
    else setWrong(asked.says ?? w("page.kept.unreached"));
  };
  return (
    <>
      {wrong !== undefined && <p role="alert">{wrong}</p>}
      {devices?.length === 0 && <p className="sub">{w("page.kept.no-devices")}</p>}
      {devices !== undefined && devices.length > 0 && (
        <ul className="kept-people kept-devices">
          {devices.map(({ id, device, begun, seen, own }) => (
            <li key={id}>
              <span>
                {device === "" ? w("page.kept.device-unnamed") : device}
                {own && ` · ${w("page.kept.device-here")}`}
                <span className="sub">
                  {w("page.kept.device-begun", { time: sayTime(begun, reader) })}
                  {seen !== null && ` · ${w("page.kept.device-seen", { time: sayTime(seen, reader) })}`}
                </span>
              </span>
              {!own && (
                <EndDevice
                  device={device === "" ? w("page.kept.device-unnamed") : device}
                  onEnd={() => void end(id)}
                />
              )}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** The device is out at once, and what it has not sent waits for another sign-in. */
function EndDevice({ device, onEnd }: { device: string; onEnd: () => void }) {
  const { w } = useWords();
  return (
    <TwicePress
      first={{ text: w("page.kept.end-device"), label: w("page.kept.end-device-which", { device }) }}
      sure={{ text: w("page.kept.end-device-now"), label: w("page.kept.end-device-now-which", { device }) }}
      onSure={onEnd}
    />
  );
}
