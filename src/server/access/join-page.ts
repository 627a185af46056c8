/** The page that an invitation's link opens: it takes the secret out of the address at once, and exchanges it for a session. */
import type { Hono } from "hono";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { send } from "../answers.ts";
import { LONGEST_DEVICE } from "../bodies.ts";
import { mediaType } from "../policy.ts";
import { languageOf } from "../refusals.ts";

/** Where the script finds its words, so that it holds none itself. */
const SCRIPT = `
const secret = location.hash.slice(1);
history.replaceState(null, "", location.pathname);
const button = document.querySelector("button");
const told = document.querySelector("[role=status]");
button.disabled = secret === "";
if (secret === "") told.textContent = button.dataset.none;
button.addEventListener("click", async () => {
  button.disabled = true;
  try {
    const answer = await fetch("/api/sign-in", {
      method: "POST",
      headers: { "Content-Type": "application/json", Accept: "application/json" },
      body: JSON.stringify({ secret, device: document.querySelector("input").value }),
    });
    if (answer.ok) return location.replace("/");
    told.textContent = (await answer.json()).error.message;
  } catch {
    told.textContent = button.dataset.unreached;
    button.disabled = false;
  }
});
`;

const STYLE = `
body { font: 1.125rem/1.5 sans-serif; margin: 2rem auto; max-width: 34rem; padding: 0 1rem; color: #1c2321; background: #fff; }
button { font: inherit; min-height: 3.5rem; width: 100%; border: 2px solid #1c2321; border-radius: 0.5rem; background: #1c2321; color: #fff; }
label, small { display: block; }
input { font: inherit; box-sizing: border-box; min-height: 3rem; width: 100%; border: 2px solid #1c2321; border-radius: 0.5rem; padding: 0 0.75rem; background: #fff; color: #1c2321; }
button:disabled { background: #fff; color: #1c2321; }
button:focus-visible, input:focus-visible { outline: 3px solid #0b5cad; outline-offset: 3px; }
`;

/** A press is asked for: what only looks at links, as messengers do, must not use an invitation up. */
export function joinPage(app: Hono): void {
  app.get("/join", ({ req }) => {
    const language = languageOf(req.raw);
    const tell = (key: string): string => say(message(key), { language, units: "mm", denominator: 16 });
    const page = `<!doctype html>
<html lang="${language}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Outerleaf</title>
<link rel="stylesheet" href="/join.css">
<main>
<h1>Outerleaf</h1>
<p>${tell("page.join.what")}</p>
<p><label for="device">${tell("page.join.device")}</label>
<input id="device" maxlength="${LONGEST_DEVICE}" autocomplete="off" aria-describedby="device-why">
<small id="device-why">${tell("page.join.device-why")}</small></p>
<p><button type="button" data-none="${tell("page.join.none")}" data-unreached="${tell("page.join.unreached")}">${tell("page.join.go")}</button></p>
<p role="status"></p>
</main>
<script src="/join.js" type="module"></script>
</html>
`;
    return sent(page, "join.html", req.raw);
  });
  app.get("/join.js", ({ req }) => sent(SCRIPT, "join.js", req.raw));
  app.get("/join.css", ({ req }) => sent(STYLE, "join.css", req.raw));
}

function sent(text: string, name: string, request: Request): Response {
  return send(new TextEncoder().encode(text), { request, type: mediaType(name), kind: "page" });
}
