import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import { type Pick, pickKey } from "../picks/pick.ts";
import { ancestors, type TreeNode, visibleTree } from "../picks/tree.ts";
import { useWords } from "../words.ts";

/** All that is drawn, face by face: the way through the drawing without a pointer. */
export function ItemTree({
  design,
  pick,
  onPick,
}: {
  design: Design;
  pick: Pick | undefined;
  onPick: (pick: Pick) => void;
}) {
  const { w, s } = useWords();
  const [open, setOpen] = useState<ReadonlySet<string>>(() => new Set(pick ? ancestors(design, pick) : []));
  const rows = useMemo(() => visibleTree(design, open), [design, open]);
  const tree = useRef<HTMLDivElement>(null);
  const current = pick && rows.some(({ key }) => key === pickKey(pick)) ? pickKey(pick) : rows[0]?.key;

  useEffect(() => {
    if (pick) setOpen((held) => new Set([...held, ...ancestors(design, pick)]));
  }, [design, pick]);
  useEffect(() => {
    tree.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: "nearest" });
  });

  const go = (node: TreeNode | undefined): void => {
    if (!node) return;
    onPick(node.pick);
    // The row may be made by this very press: it takes the focus when it is there.
    requestAnimationFrame(() =>
      tree.current?.querySelector<HTMLElement>(`[data-key="${CSS.escape(node.key)}"]`)?.focus(),
    );
  };
  const fold = (key: string, unfold: boolean): void =>
    setOpen((held) => {
      const next = new Set(held);
      if (unfold) next.add(key);
      else next.delete(key);
      return next;
    });
  const onKeyDown = (event: KeyboardEvent): void => {
    const at = rows.findIndex(({ key }) => key === current);
    const node = rows[at];
    if (!node) return;
    const unfolded = open.has(node.key);
    switch (event.key) {
      case "ArrowDown":
        go(rows[Math.min(at + 1, rows.length - 1)]);
        break;
      case "ArrowUp":
        go(rows[Math.max(at - 1, 0)]);
        break;
      case "Home":
        go(rows[0]);
        break;
      case "End":
        go(rows.at(-1));
        break;
      case "ArrowRight":
        if (node.hasChildren && !unfolded) fold(node.key, true);
        else if (unfolded) go(rows[at + 1]);
        break;
      case "ArrowLeft":
        if (unfolded) fold(node.key, false);
        else go(rows.find(({ key }) => key === node.parent));
        break;
      case "Enter":
      case " ":
        go(node);
        break;
      default:
        return;
    }
    event.preventDefault();
  };

  return (
    <div ref={tree} className="tree" role="tree" aria-label={w("page.items")} onKeyDown={onKeyDown}>
      {rows.map((node) => {
        const unfolded = open.has(node.key);
        return (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the tree handles the keys of all its rows
          <div
            key={node.key}
            data-key={node.key}
            data-level={node.level}
            role="treeitem"
            aria-level={node.level}
            aria-posinset={node.place}
            aria-setsize={node.of}
            aria-selected={pick !== undefined && pickKey(pick) === node.key}
            aria-expanded={node.hasChildren ? unfolded : undefined}
            tabIndex={node.key === current ? 0 : -1}
            onClick={() => {
              go(node);
              if (node.hasChildren) fold(node.key, !unfolded);
            }}
          >
            <span className="twist" aria-hidden="true">
              {node.hasChildren ? (unfolded ? "−" : "+") : ""}
            </span>
            {s(node.label)}
          </div>
        );
      })}
    </div>
  );
}
