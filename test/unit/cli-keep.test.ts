/** People, copies and archives from the command line. What is checked is our own promise; no outside source. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { connect } from "node:tls";
import { afterAll, beforeAll, expect, it } from "vitest";
import { ownCertificate } from "../../src/server/certificate.ts";
import { openStore } from "../../src/store/open.ts";
import { message } from "../../src/text/message.ts";
import { bench } from "../helpers/cli.ts";
import { told } from "../helpers/journal.ts";
import { describeWithStore, type StoreFolder, storeFolder } from "../helpers/store.ts";

describeWithStore("what is kept, from the command line", () => {
  const desk = bench();
  let place: StoreFolder;
  const id = "0123456789abcdef01234567";
  beforeAll(async () => {
    place = storeFolder();
    const store = await place.open();
    const document = JSON.parse(readFileSync("examples/porch.outerleaf.json", "utf8"));
    await store.put(id, {
      name: "porch.outerleaf.json",
      title: "Shed",
      document,
      says: message("page.edit.read", { file: "porch" }),
      time: "2027-05-04T07:30:00.000Z",
      onto: undefined,
    });
    await store.journal.append(id, [told(1)], { who: "Ada", time: "2027-05-04T07:31:00.000Z" });
    store.close();
  });
  afterAll(() => {
    place.clear();
    desk.clear();
  });
  const json = (out: string) => JSON.parse(out) as Record<string, unknown>;

  it("invites, lists and shuts out", async () => {
    const data = ["--data", place.folder];
    const { exit, out } = await desk.run("people", "invite", "Ada", "--role", "reader", ...data, "--json");
    expect(exit).toBe(0);
    const { link } = json(out) as { link: string };
    // The secret stands in the fragment, which no browser sends.
    expect(new URL(link)).toMatchObject({ pathname: "/join", search: "" });
    expect(new URL(link).hash.length).toBeGreaterThan(40);
    expect((await desk.run("people", "list", ...data)).out).toContain("Ada");
    expect((await desk.run("people", "invite", "Ada", "--role", "owner", ...data)).exit).toBe(2);
    expect((await desk.run("people", "revoke", "Nobody", ...data)).exit).toBe(2);
    expect((await desk.run("people", "revoke", "Ada", ...data)).exit).toBe(0);
    expect((await desk.run("people", "list", ...data)).out).toContain("shut out");
    const file = readFileSync(join(place.folder, "outerleaf.sqlite"));
    expect(file.includes(new URL(link).hash.slice(1))).toBe(false);
  });

  it("copies the database and puts the copy in place elsewhere, never over one", async () => {
    const copy = join(desk.folder, "copy.sqlite");
    expect((await desk.run("backup", copy, "--data", place.folder)).exit).toBe(0);
    expect((await desk.run("backup", copy, "--data", place.folder)).exit).toBe(2);
    const other = join(desk.folder, "other");
    expect((await desk.run("restore", copy, "--data", other)).exit).toBe(0);
    expect((await desk.run("people", "list", "--data", other)).out).toContain("Ada");
  });

  it("freezes the documents of a revision once, and hands them on with the archive", async () => {
    const data = ["--data", join(desk.folder, "frozen")];
    await desk.run("new", "wall.json");
    const issue = ["issue", "wall.json", "--revision", "A", "--note", "for the saw", ...data];
    const dated = [...issue, "--date", "2026-05-04", "--json"];
    expect(json((await desk.run(...dated, "--to", "a")).out)).toMatchObject({ frozen: 1 });
    const archive = join(desk.folder, "frozen.zip");
    expect((await desk.run("export", "wall.json", "--to", archive, ...data)).exit).toBe(0);
    const elsewhere = join(desk.folder, "fourth");
    expect((await desk.run("import", archive, "--data", elsewhere)).exit).toBe(0);
    const opened = await openStore(elsewhere);
    if (!opened.ok) throw new Error(opened.says.key);
    const { id: own } = json((await desk.run("import", archive, "--data", elsewhere, "--json")).out) as {
      id: string;
    };
    const [set, ...others] = await opened.store.issued.list(own);
    expect(others).toEqual([]);
    expect(set?.files.map(({ name }) => name)).toEqual(
      // Hidden beside them lies what they were drawn from.
      desk.names("a").filter((name) => !name.startsWith(".")),
    );
    for (const { name } of set?.files ?? []) {
      const held = await opened.store.issued.file(own, 1, name);
      expect({ name, same: desk.bytes(join("a", name)).equals(held ?? new Uint8Array()) }).toEqual({
        name,
        same: true,
      });
    }
    opened.store.close();
  });

  it("packs a project with its journal into one archive, and takes it in elsewhere", async () => {
    const archive = join(desk.folder, "shed.zip");
    expect((await desk.run("export", id, "--to", archive, "--data", place.folder)).exit).toBe(0);
    expect(existsSync(archive)).toBe(true);
    const data = ["--data", join(desk.folder, "third")];
    const { exit, out } = await desk.run("import", archive, ...data, "--json");
    expect(exit).toBe(0);
    expect(json(out)).toMatchObject({ title: "Shed", revisions: 1, entries: 1 });
    const broken = join(desk.folder, "broken.zip");
    desk.write("broken.zip", "no archive");
    expect((await desk.run("import", broken, ...data)).exit).toBe(2);
  });

  it("lets phones in under the reader's own certificate, and refuses one without its key or with another's", async () => {
    const hosts = ["localhost", "127.0.0.1"];
    const own = ownCertificate({ folder: join(desk.folder, "own"), hosts, now: new Date() });
    ownCertificate({ folder: join(desk.folder, "others"), hosts, now: new Date() });
    const certificate = ["--certificate", join("own", "lan-certificate.pem")];
    const key = (folder: string) => ["--key", join(folder, "lan-key.pem")];
    const serve = ["serve", "porch.outerleaf.json", "--lan", "--port", String(FREE), "--data", place.folder];
    let shown = "";
    const { exit, out } = await desk.serve(
      async (url) => {
        // The next port is the phones': what they see there is the given certificate.
        const port = Number(new URL(url).port) + 1;
        shown = await fingerprintAt(port).catch(() => "");
      },
      ...serve,
      ...certificate,
      ...key("own"),
    );
    expect([exit, shown]).toEqual([0, own.fingerprint]);
    expect(out).toContain(own.fingerprint);
    for (const [mistake, says] of [
      [certificate, "--key"],
      [[...certificate, ...key("others")], "is not the key"],
      [[...certificate, "--key", "nowhere.pem"], "nowhere.pem"],
    ] as const) {
      const refused = await desk.run(...serve, ...mistake);
      expect([refused.exit, refused.out]).toEqual([2, ""]);
      expect(refused.err).toContain(says);
    }
  });
});

/** A port that tests elsewhere do not use; the command goes on to the next where it is taken. */
const FREE = 47_310;

function fingerprintAt(port: number): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect({ port, host: "127.0.0.1", rejectUnauthorized: false }, () => {
      resolve(socket.getPeerX509Certificate()?.fingerprint256 ?? "");
      socket.end();
    });
    socket.on("error", reject);
  });
}
