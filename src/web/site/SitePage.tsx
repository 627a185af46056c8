import { useEffect, useMemo, useState } from "react";
import type { Reader } from "../../text/say.ts";
import { keepPreferences, type Preferences, readPreferences } from "../sheet/preferences.ts";
import { ReaderContext, useWords, wordsFor } from "../words.ts";
import { DayView } from "./day/DayView.tsx";
import { FindPiece } from "./find/FindPiece.tsx";
import type { HeldDesign } from "./held.ts";
import { HoldForm } from "./holds/HoldForm.tsx";
import { HoldsView } from "./holds/HoldsView.tsx";
import { PieceView } from "./piece/PieceView.tsx";
import type { Whys } from "./queue/model.ts";
import { QueueView } from "./queue/QueueView.tsx";
import { fragmentOf, type Route, routeOf, useFragment } from "./route.ts";
import { OpeningsView } from "./survey/OpeningsView.tsx";
import { SurveyView } from "./survey/SurveyView.tsx";
import { type Site, useSite } from "./use-site.ts";

/** The pages of the site: one at a time, with the queue always in sight. */
export function SitePage({ first }: { first: Promise<HeldDesign | undefined> }) {
  const [preferences, setPreferences] = useState<Preferences>(readPreferences);
  const [asProject, setAsProject] = useState<Partial<Reader>>({});
  const language = preferences.language ?? asProject.language ?? "en";
  const units = preferences.units ?? asProject.units ?? "mm";
  const denominator = asProject.denominator ?? 16;
  const reader = useMemo<Reader>(() => ({ language, units, denominator }), [language, units, denominator]);
  const { w } = wordsFor(reader);
  const whys = useMemo<Whys>(() => {
    const words = wordsFor(reader);
    return {
      other: words.w("page.site.refused-other"),
      unusable: (field) => words.w("page.site.refused-field", { field }),
    };
  }, [reader]);
  const site = useSite(first, language, whys);
  const route = routeOf(useFragment());
  const display = site.held?.design.project.display;
  const title = w("page.site");

  useEffect(() => setAsProject(display ?? {}), [display]);
  useEffect(() => {
    document.documentElement.lang = language;
    document.title = title;
  }, [language, title]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another page begins at its head
  useEffect(() => {
    scrollTo(0, 0);
  }, [fragmentOf(route)]);

  const prefer = (more: Partial<Preferences>): void => {
    const next = { ...preferences, ...more };
    keepPreferences(next);
    setPreferences(next);
  };
  return (
    <ReaderContext value={reader}>
      <div className="site">
        <Head site={site} />
        <main className="site-main">
          {site.isForgetful && (
            <p className="warn" role="alert">
              {w("page.site.forgetful")}
            </p>
          )}
          {site.held ? (
            <View site={site} route={route} />
          ) : (
            <p role="status">{w(site.isLooking ? "page.site.looking" : "page.site.none")}</p>
          )}
          {route.view === "find" && (
            <div className="pair">
              <button type="button" onClick={() => prefer({ language: language === "en" ? "fr" : "en" })}>
                {w("page.site.other-language")}
              </button>
              <button type="button" onClick={() => prefer({ units: units === "mm" ? "feet-inch" : "mm" })}>
                {w(units === "mm" ? "page.site.in-feet" : "page.site.in-mm")}
              </button>
            </div>
          )}
        </main>
        <Foot view={route.view} />
      </div>
    </ReaderContext>
  );
}

function View({ site, route }: { site: Site; route: Route }) {
  switch (route.view) {
    case "piece":
      return <PieceView key={route.mark} site={site} mark={route.mark} sum={route.sum} />;
    case "day":
      return <DayView site={site} />;
    case "holds":
      return <HoldsView site={site} />;
    case "hold":
      return <HoldForm key={fragmentOf(route)} site={site} face={route.face} point={route.point} />;
    case "survey":
      return <SurveyView key={route.face} site={site} face={route.face} />;
    case "openings":
      return <OpeningsView key={route.face} site={site} face={route.face} />;
    case "queue":
      return <QueueView site={site} />;
    case "find":
      return <FindPiece site={site} />;
  }
}

/** The job, and how many entries wait: never by colour alone. */
function Head({ site }: { site: Site }) {
  const { w } = useWords();
  const open = site.waiting.filter(({ refused }) => refused === undefined).length;
  const refused = site.waiting.length - open;
  const key =
    refused > 0
      ? "page.site.chip-refused"
      : open > 0
        ? "page.site.chip-waiting"
        : site.rest === "empty"
          ? "page.site.chip-sent"
          : "page.site.chip-away";
  return (
    <header className="site-head">
      <h1>{site.held?.design.project.title ?? w("page.site")}</h1>
      <a className="press" href={fragmentOf({ view: "queue" })} aria-live="polite">
        {w(key, { count: refused > 0 ? refused : open })}
      </a>
    </header>
  );
}

const PLACES = ["find", "day", "holds", "queue"] as const;

function Foot({ view }: { view: Route["view"] }) {
  const { w } = useWords();
  const own: Route["view"] = view === "hold" ? "holds" : view === "piece" ? "find" : view;
  return (
    <nav className="site-foot" aria-label={w("page.site.nav")}>
      {PLACES.map((one) => (
        <a
          key={one}
          className="press"
          href={fragmentOf({ view: one })}
          {...(one === own && { "aria-current": "page" as const })}
        >
          {w(`page.site.nav-${one}`)}
        </a>
      ))}
    </nav>
  );
}
