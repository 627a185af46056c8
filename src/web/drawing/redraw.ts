/**
 * Draws a list of elements over what is drawn already: what stays stays, a path or a text that only stands otherwise takes its
 * new place, and the rest is made. A drag changes a few of a face's elements, and a browser styles, lays out and paints each one made anew.
 */
import type { LayerElements } from "../../output/svg/marks.ts";

const SVG = "http://www.w3.org/2000/svg";

interface DrawnElement {
  readonly text: string;
  readonly node: Element;
  /** Told where it was asked before. */
  readonly standing?: Standing | undefined;
}

/** A layer that is drawn. */
export interface DrawnLayer {
  readonly layer: string;
  readonly node: Element;
  readonly elements: readonly DrawnElement[];
}

/**
 * @param host holds nothing but what this function put there
 * @param drawn what the last call gave
 * @returns what is drawn now
 */
export function redraw(
  host: Element,
  drawn: readonly DrawnLayer[],
  layers: readonly LayerElements[],
): DrawnLayer[] {
  const before = queued(drawn, ({ layer }) => layer);
  const next = layers.map(({ layer, elements }): DrawnLayer => {
    const old = before.get(layer)?.shift();
    const node = old?.node ?? layerNode(layer);
    return { layer, node, elements: redrawLayer(node, old?.elements ?? [], elements) };
  });
  place(host, next);
  return next;
}

export function svgGroup(): Element {
  return document.createElementNS(SVG, "g");
}

function layerNode(layer: string): Element {
  const node = svgGroup();
  node.setAttribute("data-layer", layer);
  return node;
}

function redrawLayer(
  host: Element,
  drawn: readonly DrawnElement[],
  elements: readonly string[],
): DrawnElement[] {
  const alike = queued(drawn, ({ text }) => text);
  const next: (DrawnElement | undefined)[] = elements.map((text) => alike.get(text)?.shift());
  const left = new Map<string, Told[]>();
  for (const queue of alike.values())
    for (const { text, node, standing = standingOf(text) } of queue) {
      if (standing) enqueue(left, standing.head, { node, standing });
    }
  const toMake: number[] = [];
  for (const [i, text] of elements.entries()) {
    if (next[i]) continue;
    const standing = standingOf(text);
    const old = standing && left.get(standing.head)?.shift();
    if (!old) {
      toMake.push(i);
      continue;
    }
    for (const [at, [name, value]] of standing.place.entries())
      if (old.standing.place[at]?.[1] !== value) old.node.setAttribute(name, value);
    next[i] = { text, node: old.node, standing };
  }
  if (toMake.length > 0) {
    const made = svgGroup();
    made.innerHTML = toMake.map((i) => elements[i]).join("");
    for (const [at, node] of [...made.children].entries()) {
      const i = toMake[at] as number;
      next[i] = { text: elements[i] as string, node };
    }
  }
  const all = next.filter((one) => one !== undefined);
  const same = all.length === drawn.length && all.every(({ node }, i) => node === drawn[i]?.node);
  if (!same) place(host, all);
  return all;
}

/** An element without its place, by which it is the same element, and its place. */
interface Standing {
  readonly head: string;
  readonly place: readonly (readonly [name: string, value: string])[];
}

interface Told {
  readonly node: Element;
  readonly standing: Standing;
}

/** Of a path or a text that is not turned; undefined where head and place are not told apart. */
function standingOf(text: string): Standing | undefined {
  if (text.startsWith("<path ")) {
    const from = text.indexOf(' d="') + 4;
    return { head: text.slice(0, from), place: [["d", text.slice(from, text.indexOf('"', from))]] };
  }
  const found = TEXT_PLACE.exec(text);
  if (!found) return undefined;
  const [all, x = "", y = ""] = found;
  // A turned text has its place in its turn as well.
  if (text.includes(' transform="', found.index)) return undefined;
  return {
    head: text.slice(0, found.index) + text.slice(found.index + all.length),
    place: [
      ["x", x],
      ["y", y],
    ],
  };
}

/** What the renderer writes of a text's place. */
const TEXT_PLACE = / x="([^"]*)" y="([^"]*)"(?= font-size=)/;

/** Takes out of `host` what is not among the nodes, and brings these into their order. */
function place(host: Element, next: readonly { readonly node: Element }[]): void {
  const staying = new Set(next.map(({ node }) => node));
  for (const child of [...host.children]) if (!staying.has(child)) child.remove();
  let at = host.firstElementChild;
  for (const { node } of next) {
    if (node === at) at = at.nextElementSibling;
    else host.insertBefore(node, at);
  }
}

function queued<Value>(values: readonly Value[], keyOf: (value: Value) => string): Map<string, Value[]> {
  const queues = new Map<string, Value[]>();
  for (const value of values) enqueue(queues, keyOf(value), value);
  return queues;
}

function enqueue<Value>(queues: Map<string, Value[]>, key: string, value: Value): void {
  const queue = queues.get(key);
  if (queue) queue.push(value);
  else queues.set(key, [value]);
}
